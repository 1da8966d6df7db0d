package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When the nightly comparison is due, and how long a booking that failed waits. Both are our own choice: common practice, no source. */
class FlowTimesTest {

    private static Optional<Instant> due(String now, String time) {
        return new ReconcileSettings(time).after(Instant.parse(now).atZone(ZoneId.of("Europe/Lisbon")));
    }

    /** Lisbon is at UTC in winter and an hour ahead in summer; on 28 March 2027 clocks jump from 01:00 to 02:00. */
    @ParameterizedTest
    @CsvSource({
        "2026-11-25T01:00:00Z, 02:30, 2026-11-25T02:30:00Z",
        "2026-11-25T03:00:00Z, 02:30, 2026-11-26T02:30:00Z",
        "2026-07-01T01:00:00Z, 02:30, 2026-07-01T01:30:00Z",
        "2027-03-28T00:10:00Z, 01:30, 2027-03-28T01:30:00Z",
    })
    void the_comparison_is_due_at_the_hospitals_time(String now, String time, Instant due) {
        assertThat(due(now, time)).contains(due);
    }

    @Test
    void it_is_never_due_without_a_time() {
        assertThat(due("2026-11-25T01:00:00Z", "")).isEmpty();
    }

    @Test
    void waiting_doubles_up_to_half_a_minute_and_lasts_two_hours_in_all() {
        assertThat(IntStream.range(0, 8).mapToObj(Retries::pause).map(Duration::toMillis))
                .containsExactly(500L, 1_000L, 2_000L, 4_000L, 8_000L, 16_000L, 30_000L, 30_000L);
        Duration all = IntStream.range(0, 240).mapToObj(Retries::pause).reduce(Duration.ZERO, Duration::plus);
        assertThat(all).isBetween(Duration.ofMinutes(110), Duration.ofMinutes(150));
    }
}
