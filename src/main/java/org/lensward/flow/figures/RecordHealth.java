package org.lensward.flow.figures;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.lensward.flow.AdapterSettings;
import org.lensward.flow.Watcher;
import org.springframework.boot.actuate.health.Health;
import org.springframework.boot.actuate.health.HealthIndicator;

/**
 * Whether the record answers, told by the looks that are taken anyway: a check of health asks the record nothing. Out of service while
 * none has succeeded for a minute, or for five intervals if that is longer.
 */
final class RecordHealth implements HealthIndicator {

    private static final Duration SHORTEST = Duration.ofMinutes(1);

    private final Watcher watcher;
    private final AdapterSettings settings;
    private final Clock clock;

    RecordHealth(Watcher watcher, AdapterSettings settings, Clock clock) {
        this.watcher = watcher;
        this.settings = settings;
        this.clock = clock;
    }

    @Override
    public Health health() {
        Duration intervals = settings.watch().interval().multipliedBy(5);
        Duration longest = intervals.compareTo(SHORTEST) > 0 ? intervals : SHORTEST;
        Optional<Instant> look = watcher.lastLook();
        boolean fresh =
                look.filter(each -> each.plus(longest).isAfter(clock.instant())).isPresent();
        Health.Builder health = fresh ? Health.up() : Health.outOfService();
        return health.withDetail("lastLook", look.map(Instant::toString).orElse("none"))
                .build();
    }
}
