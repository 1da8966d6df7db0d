package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import jakarta.jms.ConnectionFactory;
import java.time.Clock;
import java.time.ZoneId;
import org.apache.camel.CamelContext;
import org.apache.camel.component.mllp.MllpComponent;
import org.apache.camel.component.netty.ChannelHandlerFactory;
import org.apache.camel.spi.IdempotentRepository;
import org.apache.camel.spring.boot.CamelAutoConfiguration;
import org.apache.camel.support.processor.idempotent.FileIdempotentRepository;
import org.lensward.flow.auth.AccessConfiguration;
import org.lensward.flow.auth.RecordDoorway;
import org.lensward.flow.log.BookingTrail;
import org.lensward.plan.Policy;
import org.lensward.record.Fhir;
import org.lensward.record.hl7.Hl7Reader;
import org.lensward.record.incoming.Site;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SiteSearch;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.autoconfigure.context.PropertyPlaceholderAutoConfiguration;
import org.springframework.boot.autoconfigure.jms.JmsAutoConfiguration;
import org.springframework.boot.autoconfigure.jms.artemis.ArtemisAutoConfiguration;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Lazy;

/** The adapter: routes, queue and the steps between. Only what it uses is configured; nothing is found by scanning. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties({
    AdapterSettings.class,
    Hl7Settings.class,
    FileSettings.class,
    ReconcileSettings.class,
    HintSettings.class
})
@ImportAutoConfiguration({
    PropertyPlaceholderAutoConfiguration.class,
    ArtemisAutoConfiguration.class,
    JmsAutoConfiguration.class,
    CamelAutoConfiguration.class
})
@Import(AccessConfiguration.class)
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
        return PolicyFile.orShipped(settings.policy());
    }

    @Bean
    SiteCodes siteCodes(AdapterSettings settings) {
        return SiteCodesFile.orNone(settings.siteCodes());
    }

    @Bean
    SiteSearch siteSearch(SiteCodes codes) {
        return new SiteSearch(codes);
    }

    @Bean
    DryRun dryRun(AdapterSettings settings) {
        return new DryRun(settings.dryRun());
    }

    @Bean
    RecordHealth recordHealth(Clock clock) {
        return new RecordHealth(clock);
    }

    @Bean
    RecordClient.Terms terms(RecordHealth health, DryRun dryRun) {
        return new RecordClient.Terms(health, dryRun);
    }

    @Bean
    RecordClient recordClient(
            FhirContext fhir, AdapterSettings settings, RecordDoorway door, RecordClient.Terms terms) {
        return new RecordClient(fhir, settings.record(), door, terms);
    }

    @Bean
    Watcher watcher(RecordClient client, AdapterSettings settings, SiteSearch search, Clock clock) {
        return new Watcher(client, settings.watch(), search, clock);
    }

    @Bean
    Gatherer gatherer(RecordClient client, SiteSearch search) {
        return new Gatherer(client, search);
    }

    @Bean
    BundlePlanning bundlePlanning(FhirContext fhir, Policy policy, SiteCodes codes, Clock clock) {
        return new BundlePlanning(fhir, policy, codes, clock);
    }

    @Bean
    BookingPlanning bookingPlanning(BundlePlanning planning) {
        return new BookingPlanning(planning);
    }

    @Bean
    Publisher publisher(RecordClient client, DryRun dryRun, Watcher watcher, Clock clock) {
        dryRun.whenOff(watcher::startAnew);
        return new Publisher(client, dryRun, clock);
    }

    @Bean
    Retries retries(RecordHealth health, Clock clock) {
        return new Retries(health, clock);
    }

    @Bean
    ParkedBookings parkedBookings(ConnectionFactory broker, ObjectProvider<MessageDesk> desk) {
        return new ParkedBookings(broker, desk::getObject);
    }

    @Bean
    FlowQueues flowQueues(ConnectionFactory broker, RecordClient client) {
        return new FlowQueues(broker, client);
    }

    @Bean
    StartCheck startCheck(FhirContext fhir, RecordClient client, HintSettings hints, AdapterSettings settings) {
        return new StartCheck(fhir, client, hints, settings);
    }

    @Bean
    Reconciliation.Steps steps(RecordClient client, Watcher watcher, Gatherer gatherer, BookingPlanning planning) {
        return new Reconciliation.Steps(client, watcher, gatherer, planning);
    }

    @Bean
    Reconciliation reconciliation(
            Reconciliation.Steps steps, ParkedBookings parked, ReconcileSettings settings, Clock clock) {
        return new Reconciliation(steps, parked, settings, clock);
    }

    @Bean
    FlowState flowState(
            ConnectionFactory broker, CamelContext camel, Watcher watcher, RecordHealth health, DryRun dryRun) {
        return new FlowState(broker, camel, watcher, health, dryRun);
    }

    @Bean
    BookingQueue bookingQueue() {
        return new BookingQueue();
    }

    @Bean
    BookingTrail bookingTrail() {
        return new BookingTrail();
    }

    @Bean
    IncomingStore incomingStore(RecordClient client) {
        return new IncomingStore(client);
    }

    @Bean
    Site site(AdapterSettings adapter, Hl7Settings hl7) {
        return hl7.site(ZoneId.of(adapter.zone()));
    }

    @Bean
    @Lazy
    MessageDesk messageDesk(Hl7Settings hl7, Site site, IncomingStore store, Clock clock) {
        Hl7Reader reader = new Hl7Reader(site, hl7.charset(), hl7.processing());
        return new MessageDesk(reader, store, clock);
    }

    @Bean
    ChannelHandlerFactory mllpDecoder(Hl7Settings hl7) {
        return MllpDecoder.upTo(hl7.longest());
    }

    @Bean
    ChannelHandlerFactory mllpEncoder() {
        return MllpEncoder.each();
    }

    @Bean
    @Lazy
    FileDesk fileDesk(FhirContext fhir, Site site, FileSettings files, IncomingStore store) {
        return new FileDesk(fhir, site, files, store);
    }

    @Bean
    @Lazy
    LensOrders lensOrders(RecordClient client, Site site, Clock clock) {
        return new LensOrders(client, site, clock);
    }

    @Bean
    @Lazy
    IdempotentRepository lensOrdersSent(Hl7Settings hl7) {
        return FileIdempotentRepository.fileIdempotentRepository(
                hl7.lensOrdersSent().toFile(), 10_000, 100_000_000);
    }

    /** Camel's own would write patient data into its log. */
    @Bean
    @Lazy
    MllpComponent mllp() {
        MllpComponent mllp = new MllpComponent();
        mllp.setLogPhi(false);
        return mllp;
    }
}
