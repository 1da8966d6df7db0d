package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.optics.RayTransfer.refract;
import static org.lensward.optics.RayTransfer.system;
import static org.lensward.optics.RayTransfer.travel;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.linear.RealMatrix;
import org.lensward.quantity.Millimetres;

/** The vergence core against paraxial ray transfer. */
class ThinEyeLaws {

    /** Dioptres; a hundred-thousandth of what any lens or refraction is stated to, and far above rounding. */
    private static final double CLOSE = 1e-9;

    @Property
    void power_images_infinity_on_the_retina(
            @ForAll @DoubleRange(min = 2, max = 8) double position,
            @ForAll @DoubleRange(min = 20, max = 32) double length,
            @ForAll @DoubleRange(min = 38, max = 49) double cornea,
            @ForAll @DoubleRange(min = -10, max = 6) double refraction) {
        ThinEye eye = Eyes.thin(position, length, cornea);
        assertThat(Eyes.power(eye, refraction)).isCloseTo(RayTransfer.power(eye, refraction), within(CLOSE));
    }

    @Property
    void refraction_is_the_spectacle_lens_that_images_infinity_on_the_retina(
            @ForAll @DoubleRange(min = 2, max = 8) double position,
            @ForAll @DoubleRange(min = 20, max = 32) double length,
            @ForAll @DoubleRange(min = 38, max = 49) double cornea,
            @ForAll @DoubleRange(min = -10, max = 6) double refraction) {
        ThinEye eye = Eyes.thin(position, length, cornea);
        double power = RayTransfer.power(eye, refraction);
        assertThat(Eyes.refraction(eye, power)).isCloseTo(RayTransfer.refraction(eye, power), within(CLOSE));
        assertThat(Eyes.refraction(eye, power)).isCloseTo(refraction, within(CLOSE));
    }

    /** A thick cornea (Gullstrand: radii 7.7 and 6.8 mm, 0.5 mm of index 1.376) is a thin one at its second principal plane. */
    @Property
    void a_thick_cornea_acts_from_its_second_principal_plane(
            @ForAll @DoubleRange(min = 3, max = 7) double position,
            @ForAll @DoubleRange(min = 20, max = 32) double length) {
        RealMatrix cornea = system(refract(376 / 7.7), travel(0.5, 1.376), refract((1336 - 1376) / 6.8));
        double power = -cornea.getEntry(1, 0);
        double plane = 1336 * (cornea.getEntry(0, 0) - 1) / power;
        double thick = RayTransfer.focus(
                lens -> system(cornea, travel(position, 1.336), refract(lens), travel(length - position, 1.336)));
        ThinEye thin = Eyes.thin(position - plane, length - plane, power);
        assertThat(Eyes.power(thin, 0)).isCloseTo(thick, within(CLOSE));
    }

    @Property
    void a_plus_lens_moved_forward_needs_less_power(
            @ForAll @DoubleRange(min = 3, max = 8) double position,
            @ForAll @DoubleRange(min = 20, max = 32) double length,
            @ForAll @DoubleRange(min = 38, max = 49) double cornea,
            @ForAll @DoubleRange(min = 0.1, max = 2) double forward) {
        ThinEye eye = Eyes.thin(position, length, cornea);
        ThinEye moved = eye.withLensMoved(Millimetres.of(-forward));
        double power = Eyes.power(eye, 0);
        double movedPower = Eyes.power(moved, 0);
        // A lens without power has no place: the sign of the power is the eye's, wherever the lens sits.
        assertThat(Math.signum(movedPower)).isEqualTo(Math.signum(power));
        assertThat(movedPower - power).matches(power > 0 ? change -> change < 0 : change -> change >= 0);
    }

    @Example
    void a_lens_lies_between_cornea_and_retina() {
        assertThatIllegalArgumentException().isThrownBy(() -> Eyes.thin(0, 23, 43));
        assertThatIllegalArgumentException().isThrownBy(() -> Eyes.thin(23, 23, 43));
        ThinEye eye = Eyes.thin(5, 23, 43);
        assertThatIllegalArgumentException().isThrownBy(() -> eye.withLensMoved(Millimetres.of(-5)));
    }
}
