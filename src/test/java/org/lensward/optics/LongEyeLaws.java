package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.optics.OpticsSpecimen.CONSTANTS;
import static org.lensward.optics.OpticsSpecimen.SOMEWHERE;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.quantity.Millimetres;

/** What holds of every long-eye adjustment: calculus, no source. */
class LongEyeLaws {

    @Property
    void the_adjusted_length_has_no_jump(
            @ForAll LongEyeAdjustment adjustment,
            @ForAll FormulaName formula,
            @ForAll @DoubleRange(min = 20, max = 35) double length) {
        double step = 1e-6;
        double rise = adjusted(adjustment, formula, length + step) - adjusted(adjustment, formula, length);
        assertThat(rise).isGreaterThan(0).isLessThanOrEqualTo(step * 1.001);
    }

    @Property
    void an_eye_is_never_lengthened(
            @ForAll LongEyeAdjustment adjustment,
            @ForAll FormulaName formula,
            @ForAll @DoubleRange(min = 20, max = 35) double length) {
        assertThat(adjusted(adjustment, formula, length)).isLessThanOrEqualTo(length);
    }

    @Property
    void a_shorter_eye_asks_for_more_power_and_says_so(
            @ForAll LongEyeAdjustment adjustment,
            @ForAll("standard") Formula formula,
            @ForAll @DoubleRange(min = 24, max = 31) double length) {
        EyeShape shape = OpticsSpecimen.shape(length, 43);
        var plain = formula.see(shape, CONSTANTS, SOMEWHERE);
        var adjusted = new LongEye(formula, adjustment).see(shape, CONSTANTS, SOMEWHERE);
        boolean shortened =
                adjustment.adjust(formula.name(), shape.axialLength()).isPresent();
        assertThat(adjusted.findings().stream().map(Finding::code).toList().contains(FindingCode.AXIAL_LENGTH_ADJUSTED))
                .isEqualTo(shortened);
        var plano = org.lensward.quantity.Dioptres.of(0);
        double gain = adjusted.value().orElseThrow().power(plano).value()
                - plain.value().orElseThrow().power(plano).value();
        if (shortened) {
            assertThat(gain).isPositive();
        } else {
            assertThat(gain).isZero();
        }
    }

    @Provide
    Arbitrary<Formula> standard() {
        return Arbitraries.of(Formulas.all());
    }

    private static double adjusted(LongEyeAdjustment adjustment, FormulaName formula, double length) {
        return adjustment
                .adjust(formula, Millimetres.of(length))
                .map(Millimetres::value)
                .orElse(length);
    }
}
