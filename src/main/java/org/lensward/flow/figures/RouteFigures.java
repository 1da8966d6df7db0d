package org.lensward.flow.figures;

import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.apache.camel.CamelContext;
import org.apache.camel.Exchange;
import org.apache.camel.NamedNode;
import org.apache.camel.Route;
import org.apache.camel.spi.RoutePolicy;
import org.apache.camel.spi.RoutePolicyFactory;
import org.apache.camel.support.RoutePolicySupport;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.lensward.record.Publication;
import org.lensward.record.incoming.RefusedInput;

/** What passes through the routes: how long each booking takes to be planned, what is found, what is refused, what is parked. */
final class RouteFigures implements RoutePolicyFactory {

    private final MeterRegistry registry;

    RouteFigures(MeterRegistry registry) {
        this.registry = registry;
    }

    @Override
    public RoutePolicy createRoutePolicy(CamelContext camel, String route, NamedNode definition) {
        return new RoutePolicySupport() {
            @Override
            public void onExchangeDone(Route done, Exchange exchange) {
                switch (route) {
                    case "plan-booking" -> planned(exchange);
                    case "park" -> registry.counter("lensward.parked").increment();
                    case "hl7", "files" -> refused(exchange, route);
                    default -> {}
                }
            }
        };
    }

    /** From gathering to publishing; each try counts. */
    private void planned(Exchange exchange) {
        Timer.builder("lensward.plan")
                .description("One booking gathered, planned and published")
                .tag("outcome", exchange.isFailed() ? "failed" : "done")
                .publishPercentileHistogram()
                .register(registry)
                .record(exchange.getClock().elapsed(), TimeUnit.MILLISECONDS);
        if (exchange.getMessage().getBody() instanceof Publication.Write write) {
            write.bundle().getEntry().stream()
                    .map(BundleEntryComponent::getResource)
                    .filter(DetectedIssue.class::isInstance)
                    .map(DetectedIssue.class::cast)
                    .forEach(this::found);
        }
    }

    private void found(DetectedIssue issue) {
        registry.counter(
                        "lensward.findings",
                        "code",
                        issue.getCode().getCodingFirstRep().getCode())
                .increment();
    }

    private void refused(Exchange exchange, String way) {
        Optional.ofNullable(exchange.getException())
                .or(() -> Optional.ofNullable(exchange.getProperty(Exchange.EXCEPTION_CAUGHT, Exception.class)))
                .ifPresent(failure -> registry.counter("lensward.refused", "way", way, "code", code(failure))
                        .increment());
    }

    private static String code(Exception failure) {
        return failure instanceof RefusedInput refusal
                ? refusal.code().code()
                : failure.getClass().getSimpleName();
    }
}
