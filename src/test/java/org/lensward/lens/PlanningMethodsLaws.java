package org.lensward.lens;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.lensward.eye.Eye;
import org.lensward.eye.Sign;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LongEyeAdjustment;
import org.lensward.quantity.Millimetres;

/** What holds of the methods whatever the history says. */
class PlanningMethodsLaws {

    private static final Set<Sign> RESHAPED = Set.of(
            Sign.CORNEA_RESHAPED, Sign.CORNEA_FLATTENED_BY_LASER, Sign.CORNEA_STEEPENED_BY_LASER, Sign.CORNEA_INCISED);

    private static final Set<FormulaName> AFTER_LASER =
            Set.of(FormulaName.HAIGIS_L, FormulaName.SHAMMAS_MYOPIC, FormulaName.SHAMMAS_HYPEROPIC);

    @Property
    void a_standard_formula_never_computes_a_reshaped_cornea(
            @ForAll Set<Sign> signs,
            @ForAll boolean figures,
            @ForAll @DoubleRange(min = 20, max = 32) double length,
            @ForAll LongEyeAdjustment adjustment) {
        Eye eye = PlanningMethodsTest.eye(
                figures ? Optional.of(PlanningMethodsTest.BEFORE_LASER) : Optional.empty(), signs.toArray(Sign[]::new));
        boolean reshaped = signs.stream().anyMatch(RESHAPED::contains);
        List<PlanningMethod> methods = PlanningMethods.of(eye, Millimetres.of(length), adjustment)
                .value()
                .orElse(List.of());
        assertThat(methods).allSatisfy(method -> assertThat(
                        AFTER_LASER.contains(method.name()) || method.variant() == Variant.DOUBLE_K)
                .isEqualTo(reshaped));
        assertThat(methods.isEmpty()).isEqualTo(!PlanningMethods.refused(eye).isEmpty());
        if (!reshaped) {
            assertThat(methods).hasSizeGreaterThanOrEqualTo(5);
        }
    }

    @Property
    void no_two_methods_of_an_eye_share_a_code(
            @ForAll Set<Sign> signs, @ForAll @DoubleRange(min = 20, max = 32) double length) {
        Eye eye = PlanningMethodsTest.eye(Optional.of(PlanningMethodsTest.BEFORE_LASER), signs.toArray(Sign[]::new));
        assertThat(PlanningMethods.of(eye, Millimetres.of(length), LongEyeAdjustment.WANG_KOCH_2011)
                        .value()
                        .orElse(List.of()))
                .extracting(PlanningMethod::code)
                .doesNotHaveDuplicates();
    }
}
