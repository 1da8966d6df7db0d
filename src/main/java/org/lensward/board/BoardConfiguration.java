package org.lensward.board;

import ca.uhn.fhir.context.FhirContext;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.info.Info;
import java.time.Clock;
import org.lensward.board.access.BoardSecurity;
import org.lensward.board.api.BankApi;
import org.lensward.board.api.Bookings;
import org.lensward.board.api.ChecksApi;
import org.lensward.board.api.FlowApi;
import org.lensward.board.api.LabelsApi;
import org.lensward.board.api.OwnName;
import org.lensward.board.api.PlansApi;
import org.lensward.board.api.StockApi;
import org.lensward.board.api.TheatreClock;
import org.lensward.board.bank.BankConfiguration;
import org.lensward.board.cds.CdsConfiguration;
import org.lensward.board.check.CheckConfiguration;
import org.lensward.board.day.DayConfiguration;
import org.lensward.board.eye.EyeConfiguration;
import org.lensward.board.fhir.FhirConfiguration;
import org.lensward.board.flow.FlowPageConfiguration;
import org.lensward.board.gate.GateConfiguration;
import org.lensward.board.outcome.OutcomeConfiguration;
import org.lensward.board.page.PageConfiguration;
import org.lensward.flow.Gatherer;
import org.lensward.flow.RecordClient;
import org.lensward.flow.figures.FiguresConfiguration;
import org.lensward.plan.Policy;
import org.lensward.record.bank.LensBank;
import org.lensward.record.check.LensChecks;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SitePlanning;
import org.springdoc.core.configuration.SpringDocConfiguration;
import org.springdoc.core.properties.SpringDocConfigProperties;
import org.springdoc.webmvc.core.configuration.MultipleOpenApiSupportConfiguration;
import org.springdoc.webmvc.core.configuration.SpringDocWebMvcConfiguration;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.autoconfigure.http.HttpMessageConvertersAutoConfiguration;
import org.springframework.boot.autoconfigure.jackson.JacksonAutoConfiguration;
import org.springframework.boot.autoconfigure.thymeleaf.ThymeleafAutoConfiguration;
import org.springframework.boot.autoconfigure.web.servlet.DispatcherServletAutoConfiguration;
import org.springframework.boot.autoconfigure.web.servlet.HttpEncodingAutoConfiguration;
import org.springframework.boot.autoconfigure.web.servlet.ServletWebServerFactoryAutoConfiguration;
import org.springframework.boot.autoconfigure.web.servlet.WebMvcAutoConfiguration;
import org.springframework.boot.autoconfigure.web.servlet.error.ErrorMvcAutoConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** What people and theatre systems call over HTTP, beside the routes. Only what it uses is configured. */
@Configuration(proxyBeanMethods = false)
@ImportAutoConfiguration({
    JacksonAutoConfiguration.class,
    HttpMessageConvertersAutoConfiguration.class,
    ServletWebServerFactoryAutoConfiguration.class,
    HttpEncodingAutoConfiguration.class,
    DispatcherServletAutoConfiguration.class,
    WebMvcAutoConfiguration.class,
    ErrorMvcAutoConfiguration.class,
    ThymeleafAutoConfiguration.class,
    SpringDocConfigProperties.class,
    SpringDocConfiguration.class,
    SpringDocWebMvcConfiguration.class,
    MultipleOpenApiSupportConfiguration.class
})
@Import({
    GateConfiguration.class,
    FiguresConfiguration.class,
    BoardSecurity.class,
    PageConfiguration.class,
    Problems.class,
    PageProblems.class,
    PlansApi.class,
    ChecksApi.class,
    OwnName.class,
    LabelsApi.class,
    BankApi.class,
    StockApi.class,
    FlowApi.class,
    CdsConfiguration.class,
    FhirConfiguration.class,
    DayConfiguration.class,
    BankConfiguration.class,
    FlowPageConfiguration.class,
    OutcomeConfiguration.class,
    EyeConfiguration.class,
    CheckConfiguration.class
})
public class BoardConfiguration {

    @Bean
    LensChecks lensChecks(FhirContext fhir, Policy policy, SiteCodes codes, TheatreClock clock) {
        return new LensChecks(new SitePlanning(fhir, policy, codes), policy.check(), clock.clock());
    }

    @Bean
    LensBank lensBank(FhirContext fhir, RecordClient client) {
        return new LensBank(fhir, client);
    }

    @Bean
    Bookings bookings(RecordClient client, Gatherer gatherer, LensChecks checks) {
        return new Bookings(client, gatherer, checks);
    }

    @Bean
    TheatreClock theatreClock(Clock clock) {
        return new TheatreClock(clock);
    }

    @Bean
    OpenAPI description() {
        return new OpenAPI()
                .info(new Info()
                        .title("Lensward")
                        .version("1")
                        .description("Plans, lens checks, the lens bank and stock. Decision support: a surgeon confirms"
                                + " each plan. Faults are application/problem+json."));
    }
}
