package org.lensward.board.cds;

import ca.uhn.fhir.context.FhirContext;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.lensward.board.api.BankDesk;
import org.lensward.board.store.StockDesk;
import org.lensward.flow.AdapterSettings;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.RecordClient;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Lazy;
import org.springframework.http.HttpMethod;
import org.springframework.web.servlet.config.annotation.CorsRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** The hooks. Made when first called, so that they cost nothing at the start. */
@Lazy
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(CdsSettings.class)
public class CdsConfiguration {

    @Bean
    Shortages shortages(BankDesk bank, StockDesk stock, CdsSettings settings, Clock clock) {
        return new StockShortages(
                () -> stock.check(stock.between(LocalDate.now(clock), LocalDate.MAX), bank.all())
                        .sheet(),
                settings.stockAge(),
                clock);
    }

    @Bean
    GivenCards givenCards() {
        return new GivenCards();
    }

    @Bean
    HookData hookData(FhirContext fhir, RecordClient record, AdapterSettings settings) {
        return new HookData(fhir, record, settings.record().url());
    }

    @Bean
    PlanCards planCards(Shortages shortages, GivenCards given) {
        return new PlanCards(shortages, given);
    }

    @Bean
    HookService patientView(HookData data, PlanCards cards) {
        return new PatientView(data, cards);
    }

    @Bean
    HookService appointmentBook(HookData data, PlanCards cards) {
        return new AppointmentBook(data, cards);
    }

    @Bean
    HookService orderSign(HookData data, BundlePlanning planning) {
        return new OrderSign(data, planning);
    }

    @Bean
    Doorkeeper doorkeeper(CdsSettings settings, Clock clock) {
        return new Doorkeeper(settings, new ClientTrust(settings, clock));
    }

    @Bean
    FeedbackTrail feedbackTrail(RecordClient record, GivenCards given, Clock clock) {
        return new FeedbackTrail(record, given, clock);
    }

    @Bean
    CdsEndpoints cdsEndpoints(List<HookService> services, Doorkeeper door, ObjectMapper json, FeedbackTrail trail) {
        return new CdsEndpoints(services, door, json, trail);
    }

    /** Browsers of the named origins may call; of no other. */
    @Bean
    @Lazy(false)
    WebMvcConfigurer cdsOrigins(CdsSettings settings) {
        return new WebMvcConfigurer() {
            @Override
            public void addCorsMappings(CorsRegistry registry) {
                if (!settings.origins().isEmpty()) {
                    registry.addMapping("/cds-services/**")
                            .allowedOrigins(settings.origins().toArray(String[]::new))
                            .allowedMethods(HttpMethod.GET.name(), HttpMethod.POST.name())
                            .allowedHeaders("Authorization", "Content-Type");
                }
            }
        };
    }
}
