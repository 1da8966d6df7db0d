package org.lensward.board.cds;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.rest.client.exceptions.FhirClientConnectionException;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.hl7.fhir.r4.model.Bundle;
import org.junit.jupiter.api.Test;
import org.lensward.TurnedClock;
import org.lensward.flow.PolicyFile;
import org.lensward.record.Shelf;
import org.lensward.record.stock.StockSheet;

/** How long a stock check serves; what it finds is tested on the served day. */
class StockShortagesTest {

    private final AtomicInteger looks = new AtomicInteger();
    private final TurnedClock clock = new TurnedClock("2026-11-25T08:00:00Z");

    private StockSheet empty() {
        looks.incrementAndGet();
        LocalDate today = LocalDate.now(clock);
        return StockSheet.of(
                new Shelf(new Bundle()),
                List.of(),
                PolicyFile.shipped().stock(),
                new StockSheet.Days(today, LocalDate.MAX, today));
    }

    @Test
    void one_check_serves_many_cards_and_is_made_anew_when_it_is_too_old() {
        StockShortages shortages = new StockShortages(this::empty, Duration.ofMinutes(1), clock);
        assertThat(shortages.of("ServiceRequest/b1")).isEqualTo(Optional.of(List.of()));
        clock.turn(Duration.ofSeconds(59));
        shortages.of("ServiceRequest/b2");
        assertThat(looks).hasValue(1);
        clock.turn(Duration.ofSeconds(1));
        shortages.of("ServiceRequest/b2");
        assertThat(looks).hasValue(2);
    }

    @Test
    void a_record_that_refuses_leaves_it_unknown_and_is_asked_again_the_next_time() {
        StockShortages shortages = new StockShortages(
                () -> {
                    if (looks.incrementAndGet() == 1) {
                        throw new FhirClientConnectionException("away");
                    }
                    return empty();
                },
                Duration.ofMinutes(1),
                clock);
        assertThat(shortages.of("ServiceRequest/b1")).isEmpty();
        assertThat(shortages.of("ServiceRequest/b1")).isPresent();
    }
}
