package org.lensward.risk.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.MidPointIntegrator;
import org.lensward.quantity.Millimetres;

/** What holds of any opening over any optic; areas against Commons Math's integration, edges against points laid along them. */
class OverlapLaws {

    private static final double EXACT = 1e-9;
    private static final int POINTS = 20_000;

    private static Overlap overlap(double optic, double opening, double apart) {
        return new Overlap(Millimetres.of(optic), Millimetres.of(opening), Millimetres.of(apart));
    }

    @Property
    void least_and_greatest_rim_add_up_to_what_the_diameters_leave(
            @ForAll @DoubleRange(min = 5, max = 7) double optic,
            @ForAll @DoubleRange(min = 3, max = 7) double opening,
            @ForAll @DoubleRange(min = 0, max = 2) double apart) {
        Overlap overlap = overlap(optic, opening, apart);
        assertThat(overlap.least().plus(overlap.greatest()).value()).isCloseTo(optic - opening, within(EXACT));
        assertThat(overlap.least()).isLessThanOrEqualTo(overlap.greatest());
    }

    @Property
    void wider_or_further_off_centre_never_covers_more(
            @ForAll @DoubleRange(min = 3, max = 6) double opening,
            @ForAll @DoubleRange(min = 0, max = 2) double apart,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double more) {
        Overlap before = overlap(6, opening, apart);
        Overlap wider = overlap(6, opening + more, apart);
        Overlap further = overlap(6, opening, apart + more);
        assertThat(wider.least()).isLessThan(before.least());
        assertThat(further.least()).isLessThan(before.least());
        assertThat(wider.coveredFront()).isLessThanOrEqualTo(before.coveredFront());
        assertThat(wider.freeEdge()).isGreaterThanOrEqualTo(before.freeEdge());
    }

    @Property
    void edge_stands_free_where_and_only_where_the_cover_is_incomplete(
            @ForAll @DoubleRange(min = 4, max = 7) double opening,
            @ForAll @DoubleRange(min = 0, max = 1) double apart) {
        Overlap overlap = overlap(6, opening, apart);
        if (Math.abs(overlap.least().value()) > 1e-6) {
            assertThat(overlap.freeEdge().value() > 0).isEqualTo(!overlap.complete());
        }
    }

    /** The direction of the decentration does not matter: points are tried against a centre in any direction. */
    @Property(tries = 200)
    void the_free_edge_is_what_points_along_the_optics_edge_say(
            @ForAll @DoubleRange(min = 4, max = 7) double opening,
            @ForAll @DoubleRange(min = 0, max = 2) double apart,
            @ForAll @DoubleRange(min = 0, max = 6.28) double direction) {
        int free = 0;
        for (int point = 0; point < POINTS; point++) {
            double angle = 2 * Math.PI * point / POINTS;
            double x = 3 * Math.cos(angle) - apart * Math.cos(direction);
            double y = 3 * Math.sin(angle) - apart * Math.sin(direction);
            free += Math.hypot(x, y) < opening / 2 ? 1 : 0;
        }
        assertThat(overlap(6, opening, apart).freeEdge().value()).isCloseTo(100.0 * free / POINTS, within(0.05));
    }

    @Property(tries = 100)
    void the_covered_front_is_what_integrating_strip_by_strip_says(
            @ForAll @DoubleRange(min = 4, max = 7) double opening,
            @ForAll @DoubleRange(min = 0.01, max = 2) double apart) {
        UnivariateFunction strip = x -> {
            double optic = Math.max(0, 9 - x * x);
            double open = Math.max(0, opening * opening / 4 - (x - apart) * (x - apart));
            return 2 * Math.sqrt(Math.min(optic, open));
        };
        double shared = new MidPointIntegrator(1e-6, 1e-6, 3, 30).integrate(1 << 22, strip, -3, 3);
        assertThat(overlap(6, opening, apart).coveredFront().value())
                .isCloseTo(100 * (1 - shared / (9 * Math.PI)), within(0.01));
    }
}
