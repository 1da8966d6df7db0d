package org.lensward.board;

import ca.uhn.fhir.context.FhirContext;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.info.Info;
import java.time.Clock;
import org.lensward.board.access.BoardSecurity;
import org.lensward.board.api.BankApi;
import org.lensward.board.api.BankDesk;
import org.lensward.board.api.Bookings;
import org.lensward.board.api.ChecksApi;
import org.lensward.board.api.LabelsApi;
import org.lensward.board.api.PlansApi;
import org.lensward.board.api.StockApi;
import org.lensward.board.bank.BankPage;
import org.lensward.board.bank.CartonPage;
import org.lensward.board.bank.GoodsInPage;
import org.lensward.board.bank.RecallPage;
import org.lensward.board.bank.SheetMaker;
import org.lensward.board.day.DayPage;
import org.lensward.board.page.PageConfiguration;
import org.lensward.board.store.BankSettings;
import org.lensward.board.store.StockDesk;
import org.lensward.board.store.StoreWatch;
import org.lensward.flow.RecordClient;
import org.lensward.plan.Policy;
import org.lensward.record.bank.BankView;
import org.lensward.record.bank.LensBank;
import org.lensward.record.check.LensChecks;
import org.springdoc.core.configuration.SpringDocConfiguration;
import org.springdoc.core.properties.SpringDocConfigProperties;
import org.springdoc.webmvc.core.configuration.MultipleOpenApiSupportConfiguration;
import org.springdoc.webmvc.core.configuration.SpringDocWebMvcConfiguration;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.autoconfigure.http.HttpMessageConvertersAutoConfiguration;
import org.springframework.boot.autoconfigure.jackson.JacksonAutoConfiguration;
import org.springframework.boot.autoconfigure.thymeleaf.ThymeleafAutoConfiguration;
import org.springframework.boot.autoconfigure.web.servlet.DispatcherServletAutoConfiguration;
import org.springframework.boot.autoconfigure.web.servlet.ServletWebServerFactoryAutoConfiguration;
import org.springframework.boot.autoconfigure.web.servlet.WebMvcAutoConfiguration;
import org.springframework.boot.autoconfigure.web.servlet.error.ErrorMvcAutoConfiguration;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** What people and theatre systems call over HTTP, beside the routes. Only what it uses is configured. */
@Configuration(proxyBeanMethods = false)
@ImportAutoConfiguration({
    JacksonAutoConfiguration.class,
    HttpMessageConvertersAutoConfiguration.class,
    ServletWebServerFactoryAutoConfiguration.class,
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
    BoardSecurity.class,
    PageConfiguration.class,
    Problems.class,
    PageProblems.class,
    PlansApi.class,
    ChecksApi.class,
    LabelsApi.class,
    BankApi.class,
    StockApi.class,
    DayPage.class,
    BankPage.class,
    CartonPage.class,
    GoodsInPage.class,
    RecallPage.class
})
@EnableConfigurationProperties(BankSettings.class)
public class BoardConfiguration {

    @Bean
    LensChecks lensChecks(FhirContext fhir, Policy policy, Clock clock) {
        return new LensChecks(fhir, policy, policy.check(), clock);
    }

    @Bean
    LensBank lensBank(FhirContext fhir, RecordClient client) {
        return new LensBank(fhir, client);
    }

    @Bean
    BankView bankView(FhirContext fhir, RecordClient client, Clock clock) {
        return new BankView(fhir, client, clock);
    }

    @Bean
    StockDesk stockDesk(RecordClient client, Policy policy, Clock clock) {
        return new StockDesk(client, policy, clock);
    }

    @Bean
    StoreWatch storeWatch(BankView view, StockDesk desk, BankSettings settings, Clock clock) {
        return new StoreWatch(view, desk, settings, clock);
    }

    @Bean
    SheetMaker sheetMaker(Policy policy, BankSettings settings, Clock clock) {
        return new SheetMaker(policy, settings, clock);
    }

    @Bean
    BankDesk bankDesk(LensBank bank, StoreWatch watch, Clock clock) {
        return new BankDesk(bank, watch, clock);
    }

    @Bean
    Bookings bookings(RecordClient client, LensChecks checks) {
        return new Bookings(client, checks);
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
