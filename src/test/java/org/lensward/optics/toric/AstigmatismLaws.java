package org.lensward.optics.toric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.optics.toric.ToricSpecimen.astigmatism;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/** Vector algebra, and Long's matrices in their textbook form (Long 1976). */
class AstigmatismLaws {

    @Property
    void size_and_meridian_come_back(
            @ForAll @DoubleRange(min = 0.01, max = 10) double magnitude,
            @ForAll @DoubleRange(min = 0, max = 179.99) double steep) {
        Astigmatism vector = astigmatism(magnitude, steep);
        assertThat(vector.magnitude().value()).isCloseTo(magnitude, within(1e-9));
        double apart = Math.abs(vector.steepMeridian().value() - steep);
        assertThat(Math.min(apart, 180 - apart)).isLessThan(1e-9);
    }

    @Property
    void what_is_added_can_be_taken_away(@ForAll("vectors") Astigmatism one, @ForAll("vectors") Astigmatism other) {
        Astigmatism back = one.plus(other).minus(other);
        assertThat(back.x().value()).isCloseTo(one.x().value(), within(1e-9));
        assertThat(back.y().value()).isCloseTo(one.y().value(), within(1e-9));
    }

    @Property
    void equal_astigmatisms_across_each_other_cancel(
            @ForAll @DoubleRange(max = 6) double size, @ForAll @DoubleRange(max = 180) double steep) {
        Astigmatism sum = astigmatism(size, steep).plus(astigmatism(size, steep + 90));
        assertThat(sum.magnitude().value()).isLessThan(1e-12);
    }

    /** |C - C turned by t| = 2 C sin t, textbook. */
    @Property
    void turning_leaves_twice_the_sine(
            @ForAll @DoubleRange(max = 6) double size,
            @ForAll @DoubleRange(max = 180) double steep,
            @ForAll @DoubleRange(max = 90) double by) {
        Astigmatism cornea = astigmatism(size, steep);
        assertThat(cornea.minus(cornea.rotated(Degrees.of(by))).magnitude().value())
                .isCloseTo(2 * size * Math.sin(Math.toRadians(by)), within(1e-9));
    }

    @Property
    void a_power_matrix_is_longs(
            @ForAll @DoubleRange(min = -10, max = 10) double sphere,
            @ForAll @DoubleRange(min = -6, max = 0) double cylinder,
            @ForAll @DoubleRange(max = 179.99) double axis) {
        var expected = ToricSpecimen.longMatrix(sphere, cylinder, axis);
        PowerMatrix matrix = new SphereCylinder(Dioptres.of(sphere), Dioptres.of(cylinder), Degrees.of(axis)).matrix();
        assertThat(matrix.horizontal().value()).isCloseTo(expected.getEntry(0, 0), within(1e-9));
        assertThat(matrix.oblique().value()).isCloseTo(expected.getEntry(0, 1), within(1e-9));
        assertThat(matrix.vertical().value()).isCloseTo(expected.getEntry(1, 1), within(1e-9));
        assertThat(matrix.along(Degrees.of(axis)).value()).isCloseTo(sphere, within(1e-9));
        assertThat(matrix.along(Degrees.of(axis + 90)).value()).isCloseTo(sphere + cylinder, within(1e-9));
    }

    @Property
    void a_refraction_comes_back_from_its_matrix(
            @ForAll @DoubleRange(min = -10, max = 10) double sphere,
            @ForAll @DoubleRange(min = -6, max = -0.01) double cylinder,
            @ForAll @DoubleRange(max = 179.99) double axis) {
        SphereCylinder back = SphereCylinder.of(
                new SphereCylinder(Dioptres.of(sphere), Dioptres.of(cylinder), Degrees.of(axis)).matrix());
        assertThat(back.sphere().value()).isCloseTo(sphere, within(1e-9));
        assertThat(back.cylinder().value()).isCloseTo(cylinder, within(1e-9));
        double apart = Math.abs(back.axis().value() - axis);
        assertThat(Math.min(apart, 180 - apart)).isLessThan(1e-7);
        assertThat(back.sphericalEquivalent().value()).isCloseTo(sphere + cylinder / 2, within(1e-9));
    }

    @Provide
    Arbitrary<Astigmatism> vectors() {
        return ToricSpecimen.astigmatisms();
    }
}
