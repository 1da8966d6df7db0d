package org.lensward.optics.toric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.lensward.optics.OpticsSpecimen;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/** Against general matrix algebra of Commons Math, and the thin formula on each meridian. */
class ToricEyeLaws {

    @Property
    void without_cylinder_a_toric_eye_is_the_spherical_one(
            @ForAll("thin") ThinEye thin, @ForAll("refractions") Dioptres target) {
        ToricEye eye = new ToricEye(thin, Astigmatism.NONE);
        ToricLens ideal = eye.lensFor(target);
        assertThat(ideal.equivalent().value()).isCloseTo(thin.power(target).value(), within(1e-9));
        assertThat(ideal.cylinder().value()).isZero();
        SphereCylinder left = eye.refraction(ideal);
        assertThat(left.sphere().value())
                .isCloseTo(thin.refraction(ideal.equivalent()).value(), within(1e-9));
        assertThat(left.cylinder().value()).isCloseTo(0, within(1e-9));
    }

    @Property
    void the_ideal_lens_leaves_the_target_and_no_astigmatism(
            @ForAll("eyes") ToricEye eye, @ForAll("refractions") Dioptres target) {
        SphereCylinder left = eye.refraction(eye.lensFor(target));
        assertThat(left.sphericalEquivalent().value()).isCloseTo(target.value(), within(1e-9));
        assertThat(left.cylinder().value()).isCloseTo(0, within(1e-9));
    }

    /** V = N/(L-d) - P;  Z = V (I + d/N V)^-1;  R = (Z - K)(I + v (Z - K))^-1, by general inversion. */
    @Property
    void meridional_optics_is_matrix_optics(@ForAll("eyes") ToricEye eye, @ForAll("lenses") ToricLens lens) {
        double d = eye.eye().lensPosition().value();
        double behind = eye.eye().opticalLength().value() - d;
        double cylinder = lens.cylinder().value();
        RealMatrix lensPower = ToricSpecimen.longMatrix(
                lens.equivalent().value() - cylinder / 2, cylinder, lens.axis().value());
        double c = eye.cornea().magnitude().value();
        RealMatrix cornea = ToricSpecimen.longMatrix(
                eye.eye().cornealPower().value() + c / 2,
                -c,
                eye.cornea().steepMeridian().value());
        RealMatrix before = MatrixUtils.createRealIdentityMatrix(2)
                .scalarMultiply(1336 / behind)
                .subtract(lensPower);
        RealMatrix refraction = back(back(before, d / 1336).subtract(cornea), 0.012);
        EigenDecomposition meridians = new EigenDecomposition(symmetric(refraction));
        double most = Math.max(meridians.getRealEigenvalue(0), meridians.getRealEigenvalue(1));
        double least = Math.min(meridians.getRealEigenvalue(0), meridians.getRealEigenvalue(1));
        SphereCylinder left = eye.refraction(lens);
        assertThat(left.sphere().value()).isCloseTo(most, within(1e-7));
        assertThat(left.cylinder().value()).isCloseTo(least - most, within(1e-7));
        assertThat(left.matrix().oblique().value()).isCloseTo(refraction.getEntry(0, 1), within(1e-7));
    }

    /** A left eye is a right eye in a mirror: meridians a become 180 - a, and nothing else changes. */
    @Property
    void left_and_right_eyes_are_mirror_images(@ForAll("eyes") ToricEye eye, @ForAll("lenses") ToricLens lens) {
        Astigmatism mirror =
                new Astigmatism(eye.cornea().x(), Dioptres.of(-eye.cornea().y().value()));
        ToricLens mirrored = new ToricLens(
                lens.equivalent(), lens.cylinder(), Degrees.of(180 - lens.axis().value()));
        PowerMatrix one = eye.refraction(lens).matrix();
        PowerMatrix other = new ToricEye(eye.eye(), mirror).refraction(mirrored).matrix();
        assertThat(other.horizontal().value()).isCloseTo(one.horizontal().value(), within(1e-9));
        assertThat(other.vertical().value()).isCloseTo(one.vertical().value(), within(1e-9));
        assertThat(other.oblique().value()).isCloseTo(-one.oblique().value(), within(1e-9));
    }

    @Property
    void turning_the_eye_and_the_lens_together_turns_the_refraction(
            @ForAll("eyes") ToricEye eye, @ForAll("lenses") ToricLens lens) {
        Degrees by = Degrees.of(37);
        SphereCylinder one = eye.refraction(lens);
        SphereCylinder other = new ToricEye(eye.eye(), eye.cornea().rotated(by)).refraction(lens.rotated(by));
        assertThat(other.sphere().value()).isCloseTo(one.sphere().value(), within(1e-9));
        assertThat(other.cylinder().value()).isCloseTo(one.cylinder().value(), within(1e-9));
    }

    private static RealMatrix back(RealMatrix vergence, double distance) {
        RealMatrix step = MatrixUtils.createRealIdentityMatrix(2).add(vergence.scalarMultiply(distance));
        return vergence.multiply(new LUDecomposition(step).getSolver().getInverse());
    }

    private static RealMatrix symmetric(RealMatrix matrix) {
        return matrix.add(matrix.transpose()).scalarMultiply(0.5);
    }

    @Provide
    Arbitrary<ThinEye> thin() {
        return OpticsSpecimen.thinEyes();
    }

    @Provide
    Arbitrary<ToricEye> eyes() {
        return ToricSpecimen.eyes();
    }

    @Provide
    Arbitrary<ToricLens> lenses() {
        return ToricSpecimen.lenses();
    }

    @Provide
    Arbitrary<Dioptres> refractions() {
        return OpticsSpecimen.refractions();
    }
}
