package org.lensward.risk.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.quantity.Millimetres;

/** Circle geometry by numbers worked by hand. */
class OverlapTest {

    private static final double EXACT = 1e-9;

    private static Overlap overlap(double optic, double opening, double decentration) {
        return new Overlap(Millimetres.of(optic), Millimetres.of(opening), Millimetres.of(decentration));
    }

    @ParameterizedTest
    @CsvSource({
        "6.0, 5.25, 0.0,  0.375, 0.375, true",
        "6.0, 5.25, 0.3,  0.075, 0.675, true",
        "6.0, 5.5,  0.25, 0.0,   0.5,   true",
        "6.0, 5.5,  0.3, -0.05,  0.55,  false",
        // A coagulated opening of 5.8 mm under 6.0 mm has a tenth of a millimetre, and none a tenth off centre.
        "6.0, 5.8,  0.0,  0.1,   0.1,   true",
        "6.0, 5.8,  0.1,  0.0,   0.2,   true",
        "6.0, 6.2,  0.0, -0.1,  -0.1,   false"
    })
    void rims(double optic, double opening, double apart, double least, double greatest, boolean complete) {
        Overlap overlap = overlap(optic, opening, apart);
        assertThat(overlap.least().value()).isCloseTo(least, within(EXACT));
        assertThat(overlap.greatest().value()).isCloseTo(greatest, within(EXACT));
        assertThat(overlap.complete()).isEqualTo(complete);
    }

    /** Two equal circles a radius apart: a third of each edge lies in the other, and 2/3 - sqrt(3)/(2 pi) of the area is common. */
    @Test
    void equal_circles_a_radius_apart() {
        Overlap overlap = overlap(6, 6, 3);
        assertThat(overlap.freeEdge().value()).isCloseTo(100.0 / 3, within(EXACT));
        assertThat(overlap.coveredFront().value())
                .isCloseTo(100 * (1.0 / 3 + Math.sqrt(3) / (2 * Math.PI)), within(EXACT));
    }

    @Test
    void a_centred_opening_covers_a_ring() {
        // 1 - (5.25/6)^2
        assertThat(overlap(6, 5.25, 0).coveredFront().value()).isCloseTo(23.4375, within(EXACT));
        assertThat(overlap(6, 5.25, 0).freeEdge().value()).isZero();
    }

    @Test
    void an_opening_around_the_whole_optic_covers_nothing() {
        assertThat(overlap(6, 7, 0.5).freeEdge().value()).isCloseTo(100, within(EXACT));
        assertThat(overlap(6, 7, 0.5).coveredFront().value()).isCloseTo(0, within(EXACT));
    }

    /** No rim is left, and no edge stands free either: the opening ends where the optic does. */
    @Test
    void an_opening_exactly_over_the_optic_covers_nothing() {
        assertThat(overlap(6, 6, 0).coveredFront().value()).isCloseTo(0, within(EXACT));
        assertThat(overlap(6, 6, 0).freeEdge().value()).isZero();
        assertThat(overlap(6, 6, 0).complete()).isTrue();
    }

    @Test
    void an_opening_beside_the_optic_covers_all_of_it() {
        assertThat(overlap(6, 5, 5.5).freeEdge().value()).isCloseTo(0, within(1e-5));
        assertThat(overlap(6, 5, 7).coveredFront().value()).isCloseTo(100, within(EXACT));
    }

    @ParameterizedTest
    @CsvSource({"0, 5, 0", "6, 0, 0", "6, 5, -0.1", "-6, 5, 0"})
    void no_circle_is_refused(double optic, double opening, double apart) {
        assertThatThrownBy(() -> overlap(optic, opening, apart))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("are no circles");
    }
}
