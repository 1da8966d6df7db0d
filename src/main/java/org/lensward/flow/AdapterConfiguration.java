package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import java.time.Clock;
import java.time.ZoneId;
import org.apache.camel.spring.boot.CamelAutoConfiguration;
import org.lensward.plan.Policy;
import org.lensward.record.Fhir;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.autoconfigure.context.PropertyPlaceholderAutoConfiguration;
import org.springframework.boot.autoconfigure.jms.JmsAutoConfiguration;
import org.springframework.boot.autoconfigure.jms.artemis.ArtemisAutoConfiguration;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The adapter: routes, queue and the steps between. Only what it uses is configured; nothing is found by scanning. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(AdapterSettings.class)
@ImportAutoConfiguration({
    PropertyPlaceholderAutoConfiguration.class,
    ArtemisAutoConfiguration.class,
    JmsAutoConfiguration.class,
    CamelAutoConfiguration.class
})
public class AdapterConfiguration {

    @Bean
    FhirContext fhir() {
        return Fhir.r4();
    }

    @Bean
    Clock clock(AdapterSettings settings) {
        return Clock.system(ZoneId.of(settings.zone()));
    }

    @Bean
    Policy policy(AdapterSettings settings) {
        return settings.policy() == null ? PolicyFile.shipped() : PolicyFile.read(settings.policy());
    }

    @Bean
    RecordClient recordClient(FhirContext fhir, AdapterSettings settings) {
        return new RecordClient(fhir, settings.record());
    }

    @Bean
    Watcher watcher(RecordClient client, AdapterSettings settings, Clock clock) {
        return new Watcher(client, settings.watch(), clock);
    }

    @Bean
    Gatherer gatherer(RecordClient client) {
        return new Gatherer(client);
    }

    @Bean
    BundlePlanning bundlePlanning(FhirContext fhir, Policy policy, Clock clock) {
        return new BundlePlanning(fhir, policy, clock);
    }

    @Bean
    BookingPlanning bookingPlanning(BundlePlanning planning) {
        return new BookingPlanning(planning);
    }

    @Bean
    Publisher publisher(RecordClient client) {
        return new Publisher(client);
    }

    @Bean
    BookingQueue bookingQueue() {
        return new BookingQueue();
    }

    @Bean
    RetryNotice retryNotice() {
        return new RetryNotice();
    }
}
