package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.optics.OpticsSpecimen.between;
import static org.lensward.optics.OpticsSpecimen.seen;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.RefractiveIndex;

/** A thick eye traced ray by ray; the check is matrix optics by Commons Math. */
class ThickEyeLaws {

    @Property
    void a_thick_eye_between_its_principal_planes_is_a_thin_one(@ForAll("eyes") ThickEye eye) {
        Dioptres power = eye.implant().planes().power();
        assertThat(eye.thin().refraction(power).value())
                .isCloseTo(eye.refraction().value(), within(1e-9));
    }

    /** The ray that leaves the spectacle plane as the refraction bends it meets the axis on the retina. */
    @Property
    void the_corrected_ray_ends_on_the_retina(@ForAll("eyes") ThickEye eye) {
        double toVertex = (12 - eye.cornea().planes().front().value()) / 1000;
        RealMatrix system = travel(eye.vitreous().value() / 1336)
                .multiply(refract(eye.implant().backPower().value()))
                .multiply(travel(eye.implant().thickness().value()
                        / 1000
                        / eye.implant().material().value()))
                .multiply(refract(eye.implant().frontPower().value()))
                .multiply(travel(eye.chamber().value() / 1336))
                .multiply(refract(-40.0 / eye.cornea().backRadius().value()))
                .multiply(travel(0.0005 / 1.376))
                .multiply(refract(376 / eye.cornea().frontRadius().value()))
                .multiply(travel(toVertex))
                .multiply(refract(eye.refraction().value()));
        assertThat(system.getEntry(0, 0)).isCloseTo(0, within(1e-9));
    }

    /** Thin formulas and the thick eye they stand for agree to about a dioptre for a normal eye: an explanation, not a replacement. */
    @Property
    void the_thick_eye_behind_a_formula_ends_near_its_prediction(
            @ForAll("formulas") Formula formula, @ForAll("normal") EyeShape shape) {
        ThinEye thin = seen(formula, shape);
        Dioptres power = thin.power(Dioptres.of(0));
        ThickEye thick = ThickEye.behind(
                shape, thin, ThickImplant.equiconvex(power, Millimetres.of(0.7), RefractiveIndex.of(1.47)));
        assertThat(thick.thin().lensPosition().value())
                .isCloseTo(thin.lensPosition().value(), within(1e-9));
        assertThat(thick.refraction().value()).isBetween(-1.5, 1.5);
    }

    @Provide
    Arbitrary<ThickEye> eyes() {
        // A bent lens next to no power has its planes anywhere; no implant is made like that
        Arbitrary<ThickImplant> implants = Combinators.combine(
                        between(-10, 35).filter(power -> Math.abs(power) > 1),
                        between(-5, 5),
                        between(0.2, 1.5),
                        between(1.42, 1.55))
                .as((power, bend, thickness, index) -> new ThickImplant(
                        Dioptres.of(power / 2 + bend),
                        Dioptres.of(power / 2 - bend),
                        Millimetres.of(thickness),
                        RefractiveIndex.of(index)));
        return Combinators.combine(between(6.8, 8.8), between(3, 6), implants, between(14, 26))
                .as((radius, chamber, implant, vitreous) -> new ThickEye(
                        ThickCornea.ofFront(Millimetres.of(radius)),
                        Millimetres.of(chamber),
                        implant,
                        Millimetres.of(vitreous)));
    }

    @Provide
    Arbitrary<Formula> formulas() {
        // Haigis is left out: a constant converted for it is about 1 D off (see HaigisConstants)
        return Arbitraries.of(new SrkT(), new T2(), new Holladay1(), new HofferQ());
    }

    @Provide
    Arbitrary<EyeShape> normal() {
        return Combinators.combine(between(22, 25), between(42, 46)).as(OpticsSpecimen::shape);
    }

    private static RealMatrix refract(double power) {
        return new Array2DRowRealMatrix(new double[][] {{1, 0}, {-power, 1}});
    }

    private static RealMatrix travel(double reduced) {
        return new Array2DRowRealMatrix(new double[][] {{1, reduced}, {0, 1}});
    }
}
