package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.optics.OpticsSpecimen.seen;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/** What holds of the formulas for corneas after laser and of the adjusted ones, as of every formula: optics, no source. */
class BeyondFormulaLaws {

    private static final Dioptres PLANO = Dioptres.of(0);

    @Property
    void refraction_undoes_power(
            @ForAll("formulas") Formula formula,
            @ForAll("shapes") EyeShape shape,
            @ForAll("refractions") Dioptres target) {
        ThinEye eye = seen(formula, shape);
        assertThat(eye.refraction(eye.power(target)).value()).isCloseTo(target.value(), within(1e-9));
    }

    /** Hoffer Q alone steps at 23.0 mm, but downwards in power, which keeps it monotone. */
    @Property
    void a_longer_eye_needs_less_power(@ForAll("formulas") Formula formula, @ForAll("shapes") EyeShape shape) {
        EyeShape longer = shape.withAxialLength(shape.axialLength().plus(Millimetres.of(0.1)));
        assertThat(seen(formula, longer).power(PLANO))
                .isLessThan(seen(formula, shape).power(PLANO));
    }

    @Property
    void a_steeper_cornea_needs_less_power(@ForAll("regressions") Formula formula, @ForAll("shapes") EyeShape shape) {
        EyeShape steeper = shape.withKeratometricPower(shape.keratometricPower().plus(Dioptres.of(0.25)));
        assertThat(seen(formula, steeper).power(PLANO))
                .isLessThan(seen(formula, shape).power(PLANO));
    }

    @Property
    void double_k_with_one_power_is_the_formula_itself(
            @ForAll("standard") Formula formula, @ForAll("shapes") EyeShape shape) {
        Dioptres k = shape.keratometricPower();
        assertThat(seen(new DoubleK(formula, k, k), shape).power(PLANO).value())
                .isCloseTo(seen(formula, shape).power(PLANO).value(), within(1e-9));
    }

    @Provide
    Arbitrary<Formula> formulas() {
        return Arbitraries.oneOf(
                regressions(),
                standard().map(formula -> new LongEye(formula, LongEyeAdjustment.WANG_KOCH_2011)),
                standard().map(formula -> new DoubleK(formula, Dioptres.of(44), Dioptres.of(38))));
    }

    @Provide
    Arbitrary<Formula> regressions() {
        return Arbitraries.of(new HaigisL(), Shammas.afterMyopicLaser(), Shammas.afterHyperopicLaser());
    }

    @Provide
    Arbitrary<Formula> standard() {
        return Arbitraries.of(Formulas.all());
    }

    @Provide
    Arbitrary<EyeShape> shapes() {
        return OpticsSpecimen.shapes();
    }

    @Provide
    Arbitrary<Dioptres> refractions() {
        return OpticsSpecimen.refractions();
    }
}
