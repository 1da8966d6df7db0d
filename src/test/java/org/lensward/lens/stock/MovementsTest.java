package org.lensward.lens.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.lens.stock.Cartons.BOOKING;
import static org.lensward.lens.stock.Cartons.IN_DATE;
import static org.lensward.lens.stock.Cartons.OTHER;
import static org.lensward.lens.stock.Cartons.TOO_LATE;
import static org.lensward.lens.stock.Cartons.carton;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;

/** The whole table of states and movements. Common practice, no source: a carton is promised, taken to theatre, then used, back or lost. */
class MovementsTest {

    /** What becomes of a carton held for the booking that asks, in date; a state, or the code of the refusal. */
    @ParameterizedTest
    @CsvSource({
        "AVAILABLE,   GOODS_IN,   UNIT_ALREADY_IN_BANK",
        "AVAILABLE,   RESERVE,    RESERVED",
        "AVAILABLE,   PICK,       UNIT_STEP_MISSING",
        "AVAILABLE,   RETURN,     AVAILABLE",
        "AVAILABLE,   IMPLANT,    UNIT_STEP_MISSING",
        "AVAILABLE,   WASTE,      WASTED",
        "AVAILABLE,   QUARANTINE, QUARANTINED",
        "AVAILABLE,   RELEASE,    AVAILABLE",
        "AVAILABLE,   CARRY,      AVAILABLE",
        "RESERVED,    GOODS_IN,   UNIT_ALREADY_IN_BANK",
        "RESERVED,    RESERVE,    RESERVED",
        "RESERVED,    PICK,       PICKED",
        "RESERVED,    RETURN,     AVAILABLE",
        "RESERVED,    IMPLANT,    UNIT_STEP_MISSING",
        "RESERVED,    WASTE,      WASTED",
        "RESERVED,    QUARANTINE, QUARANTINED",
        "RESERVED,    RELEASE,    UNIT_NOT_AVAILABLE",
        "RESERVED,    CARRY,      RESERVED",
        "PICKED,      GOODS_IN,   UNIT_ALREADY_IN_BANK",
        "PICKED,      RESERVE,    PICKED",
        "PICKED,      PICK,       PICKED",
        "PICKED,      RETURN,     AVAILABLE",
        "PICKED,      IMPLANT,    IMPLANTED",
        "PICKED,      WASTE,      WASTED",
        "PICKED,      QUARANTINE, QUARANTINED",
        "PICKED,      RELEASE,    UNIT_NOT_AVAILABLE",
        "PICKED,      CARRY,      UNIT_NOT_AVAILABLE",
        "IMPLANTED,   GOODS_IN,   UNIT_ALREADY_IN_BANK",
        "IMPLANTED,   RESERVE,    UNIT_GONE",
        "IMPLANTED,   PICK,       UNIT_GONE",
        "IMPLANTED,   RETURN,     UNIT_GONE",
        "IMPLANTED,   IMPLANT,    UNIT_GONE",
        "IMPLANTED,   WASTE,      UNIT_GONE",
        "IMPLANTED,   QUARANTINE, UNIT_GONE",
        "IMPLANTED,   RELEASE,    UNIT_GONE",
        "IMPLANTED,   CARRY,      UNIT_GONE",
        "WASTED,      GOODS_IN,   UNIT_ALREADY_IN_BANK",
        "WASTED,      RESERVE,    UNIT_GONE",
        "WASTED,      PICK,       UNIT_GONE",
        "WASTED,      RETURN,     UNIT_GONE",
        "WASTED,      IMPLANT,    UNIT_GONE",
        "WASTED,      WASTE,      UNIT_GONE",
        "WASTED,      QUARANTINE, UNIT_GONE",
        "WASTED,      RELEASE,    UNIT_GONE",
        "WASTED,      CARRY,      UNIT_GONE",
        "QUARANTINED, GOODS_IN,   UNIT_ALREADY_IN_BANK",
        "QUARANTINED, RESERVE,    UNIT_NOT_AVAILABLE",
        "QUARANTINED, PICK,       UNIT_STEP_MISSING",
        "QUARANTINED, RETURN,     UNIT_NOT_AVAILABLE",
        "QUARANTINED, IMPLANT,    UNIT_STEP_MISSING",
        "QUARANTINED, WASTE,      WASTED",
        "QUARANTINED, QUARANTINE, QUARANTINED",
        "QUARANTINED, RELEASE,    AVAILABLE",
        "QUARANTINED, CARRY,      QUARANTINED"
    })
    void every_movement_of_every_state_has_an_answer(UnitState state, MovementKind kind, String answer) {
        assertThat(answer(Movements.apply(carton(state), movement(kind, BOOKING, IN_DATE))))
                .isEqualTo(answer);
    }

    @ParameterizedTest
    @CsvSource({
        "RESERVED, RESERVE, UNIT_HELD_FOR_ANOTHER",
        "RESERVED, PICK,    UNIT_HELD_FOR_ANOTHER",
        "RESERVED, RETURN,  UNIT_HELD_FOR_ANOTHER",
        "RESERVED, IMPLANT, UNIT_HELD_FOR_ANOTHER",
        "PICKED,   RESERVE, UNIT_HELD_FOR_ANOTHER",
        "PICKED,   PICK,    UNIT_HELD_FOR_ANOTHER",
        "PICKED,   RETURN,  UNIT_HELD_FOR_ANOTHER",
        "PICKED,   IMPLANT, UNIT_HELD_FOR_ANOTHER"
    })
    void what_is_held_for_another_stays_there(UnitState state, MovementKind kind, String answer) {
        assertThat(answer(Movements.apply(carton(state), movement(kind, OTHER, IN_DATE))))
                .isEqualTo(answer);
    }

    /** The last day counts: common practice, no source. */
    @ParameterizedTest
    @CsvSource({
        "AVAILABLE,   RESERVE,    UNIT_EXPIRED",
        "RESERVED,    PICK,       UNIT_EXPIRED",
        "PICKED,      IMPLANT,    UNIT_EXPIRED",
        "QUARANTINED, RELEASE,    UNIT_EXPIRED",
        "PICKED,      RETURN,     AVAILABLE",
        "RESERVED,    WASTE,      WASTED",
        "AVAILABLE,   QUARANTINE, QUARANTINED"
    })
    void a_day_after_its_last_it_may_only_be_put_away(UnitState state, MovementKind kind, String answer) {
        assertThat(answer(Movements.apply(carton(state), movement(kind, BOOKING, TOO_LATE))))
                .isEqualTo(answer);
    }

    @Test
    void a_refusal_names_the_state_and_the_holder() {
        Outcome<LensUnit> refused = Movements.apply(carton(UnitState.RESERVED), new Movement.Reserve(OTHER, IN_DATE));

        assertThat(refused.findings())
                .extracting(Finding::message)
                .containsExactly("The unit is reserved for ServiceRequest/b1, not for ServiceRequest/b2.");
    }

    @Test
    void who_takes_it_out_of_use_says_why() {
        assertThat(movement(MovementKind.WASTE, BOOKING, IN_DATE).reason()).contains("dropped");
        assertThat(movement(MovementKind.QUARANTINE, BOOKING, IN_DATE).reason()).contains("recalled");
        assertThat(movement(MovementKind.RELEASE, BOOKING, IN_DATE).reason()).contains("recall withdrawn");
        assertThat(movement(MovementKind.GOODS_IN, BOOKING, IN_DATE).reason()).isEmpty();
        assertThat(movement(MovementKind.GOODS_IN, BOOKING, IN_DATE).booking()).isEmpty();
    }

    @Test
    void what_is_carried_stays_promised_to_whom_it_was() {
        LensUnit carried = Movements.apply(carton(UnitState.RESERVED), new Movement.Carry("Location/north"))
                .value()
                .orElseThrow();

        assertThat(carried.location()).isEqualTo("Location/north");
        assertThat(carried.heldFor()).contains(BOOKING);
        assertThat(carried.at("Location/store")).isEqualTo(carton(UnitState.RESERVED));
    }

    @Test
    void a_movement_has_a_code_for_the_trail() {
        assertThat(MovementKind.values())
                .extracting(MovementKind::code)
                .containsExactly(
                        "goods-in", "reserve", "pick", "return", "implant", "waste", "quarantine", "release", "carry");
    }

    static Movement movement(MovementKind kind, String booking, LocalDate day) {
        return switch (kind) {
            case GOODS_IN -> new Movement.GoodsIn(day);
            case RESERVE -> new Movement.Reserve(booking, day);
            case PICK -> new Movement.Pick(booking, day);
            case RETURN -> new Movement.Return(booking);
            case IMPLANT -> new Movement.Implant(booking, day);
            case WASTE -> new Movement.Waste("dropped");
            case QUARANTINE -> new Movement.Quarantine("recalled");
            case RELEASE -> new Movement.Release("recall withdrawn", day);
            case CARRY -> new Movement.Carry("Location/north");
        };
    }

    private static String answer(Outcome<LensUnit> outcome) {
        return outcome.value().map(unit -> unit.state().name()).orElseGet(() -> outcome.findings().stream()
                .map(Finding::code)
                .map(FindingCode::name)
                .reduce((one, other) -> one + " " + other)
                .orElseThrow());
    }
}
