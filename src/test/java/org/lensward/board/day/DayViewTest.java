package org.lensward.board.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** How fresh the lists are, and what is shown while the record is away. */
class DayViewTest {

    private static final LocalDate DAY = LocalDate.of(2026, 12, 10);
    private static final Instant NOON = Instant.parse("2026-12-10T12:00:00Z");
    private static final Duration LONG = Duration.ofHours(1);

    /** A source that can be away. */
    private static final class Source implements DayView.Reading {

        private final AtomicInteger readings = new AtomicInteger();
        private volatile boolean away;
        private volatile String state = "ready";

        @Override
        public DaySnapshot lists(Map<String, StockWord> stock) {
            readings.incrementAndGet();
            if (away) {
                throw new IllegalStateException("away");
            }
            return DaySnapshot.of(NOON, List.of(line("b1", state)), stock);
        }

        @Override
        public Map<String, StockWord> stock(LocalDate from, LocalDate to) {
            return Map.of();
        }
    }

    private static EyeLine line(String booking, String state) {
        return new EyeLine(
                booking,
                DAY,
                "08:30",
                "Theatre 1",
                new EyeLine.Person("Somebody", "1", ""),
                "right eye",
                "consultant",
                state,
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty());
    }

    private final Source source = new Source();

    private void awaitReadings(int more) throws InterruptedException {
        Instant end = Instant.now().plusSeconds(10);
        int wanted = source.readings.get() + more;
        while (source.readings.get() < wanted && Instant.now().isBefore(end)) {
            Thread.sleep(10);
        }
    }

    private DayView view(Duration every, Duration rest) {
        return new DayView(source, new DaySettings(every, LONG, rest), Clock.systemUTC());
    }

    @Test
    void the_first_look_waits_for_the_record_and_the_next_does_not() {
        try (DayView view = view(LONG, LONG)) {
            assertThat(view.now().on(DAY)).hasSize(1);
            view.now();
            assertThat(source.readings).hasValue(1);
        }
    }

    @Test
    void what_was_read_last_stays_with_its_time_while_the_record_is_away() throws Exception {
        try (DayView view = view(Duration.ofMillis(20), LONG)) {
            view.now();
            source.away = true;
            awaitReadings(3);
            assertThat(view.now().asOf()).isEqualTo(NOON);
            assertThat(view.now().on(DAY)).hasSize(1);
        }
    }

    @Test
    void after_something_was_written_it_is_read_again() throws Exception {
        try (DayView view = view(LONG, LONG)) {
            String before = view.now().version(DAY);
            source.state = "withheld";
            view.written();
            awaitReadings(1);
            Thread.sleep(200);
            assertThat(view.now().version(DAY)).isNotEqualTo(before);
        }
    }

    @Test
    void nobody_looks_and_nothing_is_read() throws Exception {
        try (DayView view = view(Duration.ofMillis(20), Duration.ZERO)) {
            view.now();
            int before = source.readings.get();
            Thread.sleep(200);
            assertThat(source.readings.get()).isLessThanOrEqualTo(before + 1);
        }
    }

    @Test
    void a_day_without_a_list_gives_way_to_the_next_that_has_one() {
        DaySnapshot snapshot = DaySnapshot.of(NOON, List.of(line("b1", "ready")), Map.of());
        assertThat(snapshot.nearest(DAY.minusDays(3))).isEqualTo(DAY);
        assertThat(snapshot.nearest(DAY.plusDays(3))).isEqualTo(DAY);
        assertThat(DaySnapshot.NOTHING.nearest(DAY)).isEqualTo(DAY);
    }

    @Test
    void the_version_follows_what_is_shown_and_not_when_it_was_read() {
        List<EyeLine> lines = new ArrayList<>(List.of(line("b1", "ready"), line("b2", "provisional")));
        DaySnapshot first = DaySnapshot.of(NOON, lines, Map.of());
        assertThat(DaySnapshot.of(NOON.plusSeconds(5), lines, Map.of()).version(DAY))
                .isEqualTo(first.version(DAY));
        lines.set(1, line("b2", "withheld"));
        assertThat(DaySnapshot.of(NOON, lines, Map.of()).version(DAY)).isNotEqualTo(first.version(DAY));
    }

    @Test
    void the_counts_are_of_the_whole_day_and_the_rows_of_what_is_asked_for() {
        DaySnapshot snapshot = DaySnapshot.of(
                NOON, List.of(line("b1", "ready"), line("b2", "withheld"), line("b3", "planning")), Map.of());
        DaySheetShown sheet = new DaySheetShown(DAY, snapshot, new DayFilter("", "withheld", ""), ZoneOffset.UTC);
        assertThat(sheet.theatres().get("Theatre 1"))
                .extracting(EyeLine::booking)
                .containsExactly("b2");
        assertThat(sheet.counts()).containsEntry("ready", 1L).containsEntry("planning", 1L);
        assertThat(sheet.planned()).isEqualTo(2);
        assertThat(sheet.address()).isEqualTo("/day/2026-12-10/list?state=withheld");
        assertThat(new DayFilter("Theatre 1 & 2", "", "").on("/x")).isEqualTo("/x?theatre=Theatre%201%20%26%202");
        assertThat(sheet.asOf()).isEqualTo("12:00:00");
    }

    @Test
    void a_line_names_nobody_in_a_log() {
        assertThat(line("b1", "ready") + " " + line("b1", "ready").patient())
                .contains("b1")
                .doesNotContain("Somebody");
    }
}
