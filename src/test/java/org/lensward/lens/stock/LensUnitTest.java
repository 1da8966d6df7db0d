package org.lensward.lens.stock;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNoException;
import static org.lensward.lens.stock.Stocks.NORTH;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Source: the javadoc of {@link LensUnit}. */
class LensUnitTest {

    private static final Optional<String> SOMEBODY = Optional.of("ServiceRequest/a");

    @ParameterizedTest
    @EnumSource(names = {"RESERVED", "PICKED", "IMPLANTED"})
    void a_held_carton_is_held_for_somebody(UnitState state) {
        assertThatNoException().isThrownBy(() -> Stocks.unit("x", 9, NORTH, state, SOMEBODY));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Stocks.unit("x", 9, NORTH, state, Optional.empty()))
                .withMessage("A unit that is " + state.code() + " is held for a booking");
    }

    @ParameterizedTest
    @EnumSource(names = {"AVAILABLE", "WASTED", "QUARANTINED"})
    void any_other_is_held_for_nobody(UnitState state) {
        assertThatNoException().isThrownBy(() -> Stocks.unit("x", 9, NORTH, state, Optional.empty()));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Stocks.unit("x", 9, NORTH, state, SOMEBODY))
                .withMessage("A unit that is " + state.code() + " is held for none");
    }
}
