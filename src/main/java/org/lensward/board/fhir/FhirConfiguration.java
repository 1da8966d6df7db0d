package org.lensward.board.fhir;

import ca.uhn.fhir.context.FhirContext;
import org.lensward.board.BodyLimit;
import org.lensward.board.api.Bookings;
import org.lensward.board.api.TheatreClock;
import org.lensward.flow.AdapterSettings;
import org.lensward.flow.BookingPlanning;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.Gatherer;
import org.lensward.record.bank.LensBank;
import org.lensward.record.check.LensChecks;
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
    RecordAddress recordAddress(AdapterSettings settings) {
        return new RecordAddress(settings.record().url());
    }

    @Bean
    BookingReference bookingReference(Bookings bookings, RecordAddress record) {
        return new BookingReference(bookings, record);
    }

    @Bean
    AskedPlans askedPlans(
            BundlePlanning planning, BookingPlanning bookings, BookingReference recorded, Gatherer gatherer) {
        return new AskedPlans(planning, bookings, recorded, gatherer);
    }

    @Bean
    AskedChecks.Trial trial(FhirContext fhir, BundlePlanning planning, LensChecks checks, TheatreClock clock) {
        return new AskedChecks.Trial(fhir, planning, checks, clock.clock());
    }

    @Bean
    AskedChecks askedChecks(BookingReference recorded, Bookings bookings, LensBank bank, AskedChecks.Trial trial) {
        return new AskedChecks(recorded, bookings, bank, trial);
    }

    @Bean
    FhirOperations fhirOperations(FhirExchange exchange, RecordAddress record, AskedPlans plans, AskedChecks checks) {
        return new FhirOperations(exchange, record, plans, checks);
    }

    @Bean
    FhirRefusals fhirRefusals(FhirExchange exchange) {
        return new FhirRefusals(exchange);
    }
}
