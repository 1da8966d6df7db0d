package org.lensward.flow.figures;

import io.micrometer.core.instrument.MeterRegistry;
import java.time.Clock;
import java.util.Optional;
import org.apache.activemq.artemis.core.server.embedded.EmbeddedActiveMQ;
import org.lensward.flow.AdapterSettings;
import org.lensward.flow.Watcher;
import org.lensward.flow.auth.Certificates;
import org.lensward.flow.auth.RecordDoorway;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.actuate.autoconfigure.availability.AvailabilityHealthContributorAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.availability.AvailabilityProbesAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.endpoint.EndpointAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.endpoint.web.WebEndpointAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.health.HealthContributorAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.health.HealthEndpointAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.metrics.CompositeMeterRegistryAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.metrics.JvmMetricsAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.metrics.MetricsAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.metrics.SystemMetricsAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.metrics.export.prometheus.PrometheusMetricsExportAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.web.server.ManagementContextAutoConfiguration;
import org.springframework.boot.actuate.autoconfigure.web.servlet.ServletManagementContextAutoConfiguration;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.autoconfigure.availability.ApplicationAvailabilityAutoConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Health at {@code /actuator/health}, figures at {@code /actuator/prometheus}; of the actuator only what these need. */
@Configuration(proxyBeanMethods = false)
@ImportAutoConfiguration({
    ApplicationAvailabilityAutoConfiguration.class,
    EndpointAutoConfiguration.class,
    WebEndpointAutoConfiguration.class,
    HealthContributorAutoConfiguration.class,
    HealthEndpointAutoConfiguration.class,
    AvailabilityHealthContributorAutoConfiguration.class,
    AvailabilityProbesAutoConfiguration.class,
    MetricsAutoConfiguration.class,
    CompositeMeterRegistryAutoConfiguration.class,
    JvmMetricsAutoConfiguration.class,
    SystemMetricsAutoConfiguration.class,
    PrometheusMetricsExportAutoConfiguration.class,
    ServletManagementContextAutoConfiguration.class,
    ManagementContextAutoConfiguration.class
})
public class FiguresConfiguration {

    @Bean
    Queues queues(ObjectProvider<EmbeddedActiveMQ> broker, Clock clock) {
        return new Queues(Optional.ofNullable(broker.getIfAvailable()), clock);
    }

    @Bean
    AdapterFigures adapterFigures(
            Queues queues, Watcher watcher, RecordDoorway door, Certificates certificates, Clock clock) {
        return new AdapterFigures(queues, watcher, door, certificates, clock);
    }

    @Bean
    RouteFigures routeFigures(MeterRegistry registry) {
        return new RouteFigures(registry);
    }

    @Bean
    RecordHealth recordHealthIndicator(Watcher watcher, AdapterSettings settings, Clock clock) {
        return new RecordHealth(watcher, settings, clock);
    }

    @Bean
    QueueHealth queueHealthIndicator(Queues queues) {
        return new QueueHealth(queues);
    }
}
