package org.lensward.plan.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.LIDS_INFECTED;
import static org.lensward.finding.FindingCode.PRESSURE_RAISED;
import static org.lensward.finding.FindingCode.ZONULES_WEAK;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Where an eye belongs on the list: common practice, no source. */
class PlacingTest {

    @Test
    void nothing_found_asks_for_no_place() {
        assertThat(Placing.of(true, false, List.of())).isEqualTo(new Placing(Place.ANYWHERE, List.of()));
    }

    @Test
    void infection_comes_last_whatever_else_was_found() {
        Placing placing = Placing.of(true, true, List.of(PRESSURE_RAISED, LIDS_INFECTED, ZONULES_WEAK));
        assertThat(placing.place()).isEqualTo(Place.LAST);
        assertThat(placing.reasons()).containsExactly("may leave bacteria behind: lids infected");
    }

    @Test
    void raised_pressure_and_a_room_free_of_latex_come_first() {
        Placing placing = Placing.of(true, true, List.of(PRESSURE_RAISED, ZONULES_WEAK));
        assertThat(placing.place()).isEqualTo(Place.FIRST);
        assertThat(placing.reasons()).hasSize(2);
        assertThat(Placing.of(true, true, List.of()).reasons()).containsExactly("the room must be free of latex");
    }

    @Test
    void a_difficult_eye_comes_early() {
        assertThat(Placing.of(true, false, List.of(ZONULES_WEAK)).place()).isEqualTo(Place.EARLY);
    }

    @Test
    void an_eye_without_a_planned_lens_waits() {
        assertThat(Placing.of(false, true, List.of(PRESSURE_RAISED)).place()).isEqualTo(Place.NOT_YET);
    }
}
