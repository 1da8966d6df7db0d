package org.lensward.flow.figures;

import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.binder.MeterBinder;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Supplier;
import org.lensward.flow.Watcher;
import org.lensward.flow.auth.Certificates;
import org.lensward.flow.auth.RecordDoorway;
import org.lensward.flow.auth.TokenCredentials;

/** What is read off at the moment of asking: queues, the last look, certificates, tokens. */
final class AdapterFigures implements MeterBinder {

    private static final double DAY = Duration.ofDays(1).toSeconds();

    private final Queues queues;
    private final Watcher watcher;
    private final RecordDoorway door;
    private final Certificates certificates;
    private final Clock clock;

    AdapterFigures(Queues queues, Watcher watcher, RecordDoorway door, Certificates certificates, Clock clock) {
        this.queues = queues;
        this.watcher = watcher;
        this.door = door;
        this.certificates = certificates;
        this.clock = clock;
    }

    @Override
    public void bindTo(MeterRegistry registry) {
        if (queues.areOurs()) {
            Queues.ALL.forEach(name -> bind(registry, name));
        }
        gauge(
                registry,
                "lensward.look.age",
                "seconds",
                "Since the last look at the record that counted",
                () -> watcher.lastLook().map(each -> seconds(Duration.between(each, clock.instant()))));
        days(registry, "lensward.certificate.record", "Until the record's certificate ends", certificates::ofRecord);
        days(registry, "lensward.certificate.own", "Until our certificate ends", certificates::own);
        if (door.credentials() instanceof TokenCredentials tokens) {
            FunctionCounter.builder("lensward.token.renewals", tokens, TokenCredentials::renewals)
                    .description("Tokens given by the record's authorization server")
                    .register(registry);
        }
    }

    private void bind(MeterRegistry registry, String name) {
        Gauge.builder("lensward.queue.depth", queues, each -> each.depth(name))
                .tag("queue", name)
                .description("Messages that wait")
                .register(registry);
        Gauge.builder("lensward.queue.oldest", queues, each -> each.oldest(name)
                        .map(AdapterFigures::seconds)
                        .orElse(0.0))
                .tag("queue", name)
                .baseUnit("seconds")
                .description("How long the oldest has waited")
                .register(registry);
    }

    private void days(MeterRegistry registry, String name, String what, Supplier<Optional<Instant>> end) {
        gauge(registry, name, "days", what, () -> end.get()
                .map(each -> seconds(Duration.between(clock.instant(), each)) / DAY));
    }

    /** Not a number where there is nothing to tell: a look not yet taken, a certificate not yet seen. */
    private static void gauge(
            MeterRegistry registry, String name, String unit, String what, Supplier<Optional<Double>> value) {
        Gauge.builder(name, () -> value.get().orElse(Double.NaN))
                .baseUnit(unit)
                .description(what)
                .register(registry);
    }

    private static double seconds(Duration time) {
        return time.toMillis() / 1000.0;
    }
}
