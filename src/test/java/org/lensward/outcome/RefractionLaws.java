package org.lensward.outcome;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.lensward.eye.Laterality;
import org.lensward.optics.FormulaName;
import org.lensward.optics.toric.Astigmatism;

/** Transposition: S + C x A is (S + C) - C x (A + 90), any textbook of refraction. */
class RefractionLaws {

    private static final double SAME = 1e-9;

    private static ChosenRefraction of(double sphere, Refraction.Cylinder cylinder, double vertex) {
        return Operated.ordinary()
                .with(Operated.written(Laterality.RIGHT, 28, sphere, Optional.of(cylinder), Optional.of(vertex), 1))
                .counted()
                .refraction();
    }

    @Property
    void plus_and_minus_cylinder_say_the_same(
            @ForAll @DoubleRange(min = -8, max = 8) double sphere,
            @ForAll @DoubleRange(min = 0, max = 5) double cylinder,
            @ForAll @DoubleRange(min = 0, max = 180) double axis,
            @ForAll @DoubleRange(min = 8, max = 16) double vertex) {
        ChosenRefraction plus = of(sphere, Operated.cylinder(cylinder, Refraction.Form.PLUS, axis), vertex);
        ChosenRefraction minus =
                of(sphere + cylinder, Operated.cylinder(cylinder, Refraction.Form.MINUS, (axis + 90) % 180), vertex);
        assertThat(plus.equivalent().value()).isCloseTo(minus.equivalent().value(), within(SAME));
        Astigmatism one = plus.astigmatism().orElseThrow();
        Astigmatism two = minus.astigmatism().orElseThrow();
        assertThat(one.x().value()).isCloseTo(two.x().value(), within(SAME));
        assertThat(one.y().value()).isCloseTo(two.y().value(), within(SAME));
    }

    /** Each principal meridian by itself obeys R' = R / (1 - t R), t the distance the light travels towards the eye. */
    @Property
    void the_vertex_moves_each_meridian_by_itself(
            @ForAll @DoubleRange(min = -8, max = 8) double sphere,
            @ForAll @DoubleRange(min = 0, max = 5) double cylinder,
            @ForAll @DoubleRange(min = 8, max = 16) double vertex) {
        ChosenRefraction moved = of(sphere, Operated.cylinder(cylinder, Refraction.Form.MINUS, 30), vertex);
        double travelled = (vertex - 12) / 1000;
        double along = sphere / (1 - travelled * sphere);
        double across = (sphere - cylinder) / (1 - travelled * (sphere - cylinder));
        assertThat(moved.equivalent().value()).isCloseTo((along + across) / 2, within(SAME));
        assertThat(moved.astigmatism().orElseThrow().magnitude().value()).isCloseTo(along - across, within(SAME));
    }

    @Property
    void right_and_left_are_judged_alike(@ForAll @DoubleRange(min = -3, max = 3) double sphere) {
        double right = error(Laterality.RIGHT, sphere);
        assertThat(error(Laterality.LEFT, sphere)).isEqualTo(right);
    }

    private static double error(Laterality side, double sphere) {
        return Operated.ordinary(side)
                .with(Operated.written(
                        side,
                        28,
                        sphere,
                        Optional.of(Operated.cylinder(1, Refraction.Form.MINUS, 10)),
                        Optional.of(12.0),
                        1))
                .counted()
                .error(FormulaName.SRK_T)
                .value();
    }
}
