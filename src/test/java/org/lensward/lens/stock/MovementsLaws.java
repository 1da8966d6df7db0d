package org.lensward.lens.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.lens.stock.Cartons.BOOKING;
import static org.lensward.lens.stock.Cartons.EXPIRY;
import static org.lensward.lens.stock.Cartons.OTHER;
import static org.lensward.lens.stock.Cartons.carton;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.lensward.finding.Outcome;

/** What holds of any carton, whatever is done to it. */
class MovementsLaws {

    private static final Set<UnitState> ENDS = EnumSet.of(UnitState.IMPLANTED, UnitState.WASTED);
    private static final Set<UnitState> HELD = EnumSet.of(UnitState.RESERVED, UnitState.PICKED, UnitState.IMPLANTED);

    @Property
    void a_history_never_leaves_an_end_and_never_holds_a_carton_for_two(@ForAll("histories") List<Movement> history) {
        LensUnit unit = carton(UnitState.AVAILABLE);
        for (Movement movement : history) {
            Outcome<LensUnit> outcome = Movements.apply(unit, movement);
            LensUnit after = outcome.value().orElse(unit);
            if (ENDS.contains(unit.state())) {
                assertThat(outcome.value()).isEmpty();
            }
            if (unit.heldFor().isPresent() && after.heldFor().isPresent()) {
                assertThat(after.heldFor()).isEqualTo(unit.heldFor());
            }
            unit = after;
        }
    }

    @Property
    void an_expired_carton_is_never_newly_held(@ForAll UnitState state, @ForAll("tooLate") Movement movement) {
        LensUnit unit = carton(state);
        LensUnit after = Movements.apply(unit, movement).value().orElse(unit);

        assertThat(after.at(unit.location()).equals(unit) || !HELD.contains(after.state()))
                .isTrue();
    }

    @Property
    void a_step_done_twice_is_done_once_or_refused(@ForAll UnitState state, @ForAll("movements") Movement movement) {
        Movements.apply(carton(state), movement).value().ifPresent(once -> assertThat(
                        Movements.apply(once, movement).value())
                .satisfiesAnyOf(twice -> assertThat(twice).contains(once), twice -> assertThat(twice)
                        .isEmpty()));
    }

    @Property
    void a_movement_changes_nothing_but_state_holder_and_place(
            @ForAll UnitState state, @ForAll("movements") Movement movement) {
        LensUnit unit = carton(state);
        Movements.apply(unit, movement).value().ifPresent(after -> {
            assertThat(after)
                    .usingRecursiveComparison()
                    .ignoringFields("state", "heldFor", "location")
                    .isEqualTo(unit);
            assertThat(after.location()).isEqualTo(movement.to().orElse(unit.location()));
        });
    }

    @Property
    void every_carton_that_has_not_ended_can_be_put_away(@ForAll UnitState state) {
        for (Movement away : List.of(new Movement.Waste("dropped"), new Movement.Quarantine("recalled"))) {
            assertThat(Movements.apply(carton(state), away).value().isPresent()).isEqualTo(!ENDS.contains(state));
        }
    }

    @Provide
    Arbitrary<List<Movement>> histories() {
        return movements().list().ofMaxSize(12);
    }

    @Provide
    Arbitrary<Movement> movements() {
        return Combinators.combine(
                        Arbitraries.of(MovementKind.values()),
                        Arbitraries.of(BOOKING, OTHER),
                        Arbitraries.integers().between(-3, 3))
                .as((kind, booking, days) -> MovementsTest.movement(kind, booking, EXPIRY.plusDays(days)));
    }

    @Provide
    Arbitrary<Movement> tooLate() {
        return Combinators.combine(Arbitraries.of(MovementKind.values()), Arbitraries.of(BOOKING, OTHER))
                .as((kind, booking) -> MovementsTest.movement(kind, booking, EXPIRY.plusDays(1)));
    }
}
