package org.lensward.board.fhir;

import ca.uhn.fhir.context.FhirContext;
import org.lensward.board.BodyLimit;
import org.lensward.flow.AdapterSettings;
import org.lensward.flow.BookingPlanning;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.Gatherer;
import org.lensward.flow.RecordClient;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Lazy;

/** Our own FHIR endpoint. Made when first called, so that it costs nothing at the start. */
@Lazy
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(FhirSettings.class)
public class FhirConfiguration {

    @Bean
    FhirExchange fhirExchange(FhirContext fhir, FhirSettings settings) {
        return new FhirExchange(fhir, new BodyLimit(settings.bodyLimit()));
    }

    @Bean
    RecordedBooking recordedBooking(RecordClient record, AdapterSettings settings) {
        return new RecordedBooking(record, settings.record().url());
    }

    @Bean
    AskedPlans askedPlans(
            BundlePlanning planning, BookingPlanning bookings, RecordedBooking recorded, Gatherer gatherer) {
        return new AskedPlans(planning, bookings, recorded, gatherer);
    }

    @Bean
    PlanOperation planOperation(FhirExchange exchange, AskedPlans plans) {
        return new PlanOperation(exchange, plans);
    }
}
