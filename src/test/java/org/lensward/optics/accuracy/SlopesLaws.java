package org.lensward.optics.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.analysis.differentiation.DerivativeStructure;
import org.lensward.optics.OpticsSpecimen;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;

/** The analytic slopes against automatic differentiation by Commons Math, and against Norrby's own expression. */
class SlopesLaws {

    private static final double FARTHEST = 20;

    @Property
    void slopes_are_the_derivatives(@ForAll("eyes") ThinEye eye, @ForAll @DoubleRange(min = 0, max = 34) double power) {
        Assume.that(Math.abs(eye.refraction(Dioptres.of(power)).value()) < FARTHEST);
        DerivativeStructure refraction = refraction(eye, power);
        Slopes slopes = Slopes.of(eye, Dioptres.of(power));
        assertThat(slopes.length()).isCloseTo(refraction.getPartialDerivative(1, 0, 0, 0), within(1e-9));
        assertThat(slopes.lensPosition()).isCloseTo(refraction.getPartialDerivative(0, 1, 0, 0), within(1e-9));
        assertThat(slopes.cornealPower()).isCloseTo(refraction.getPartialDerivative(0, 0, 1, 0), within(1e-9));
        assertThat(slopes.lensPower()).isCloseTo(refraction.getPartialDerivative(0, 0, 0, 1), within(1e-9));
    }

    private static DerivativeStructure refraction(ThinEye eye, double power) {
        var l = new DerivativeStructure(4, 1, 0, eye.opticalLength().value());
        var d = new DerivativeStructure(4, 1, 1, eye.lensPosition().value());
        var k = new DerivativeStructure(4, 1, 2, eye.cornealPower().value());
        var p = new DerivativeStructure(4, 1, 3, power);
        var before = l.subtract(d).reciprocal().multiply(1336).subtract(p);
        var behindCornea =
                before.reciprocal().multiply(1336).add(d).reciprocal().multiply(1336);
        var atCornea = behindCornea.subtract(k);
        return atCornea.divide(atCornea.multiply(0.012).add(1));
    }

    /** At the cornea: (P^2 + 2 P V) / 1336 ((K + R) / V)^2 (Norrby 2008, value from memory). */
    @Property
    void the_lens_positions_slope_is_norrbys(
            @ForAll("eyes") ThinEye eye, @ForAll @DoubleRange(min = 0, max = 34) double power) {
        double r = eye.refraction(Dioptres.of(power)).value();
        Assume.that(Math.abs(r) < FARTHEST);
        double atCornea = r / (1 - 0.012 * r);
        double v = 1336 / (eye.opticalLength().value() - eye.lensPosition().value()) - power;
        double gain = Math.pow((eye.cornealPower().value() + atCornea) / v, 2);
        double norrby = (power * power + 2 * power * v) / 1336 * gain;
        assertThat(Slopes.of(eye, Dioptres.of(power)).lensPosition())
                .isCloseTo(norrby * Math.pow(1 + 0.012 * atCornea, -2), within(1e-9));
    }

    @Provide
    Arbitrary<ThinEye> eyes() {
        return OpticsSpecimen.thinEyes();
    }
}
