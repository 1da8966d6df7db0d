package org.lensward.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.DEVICE_REPORTED;
import static org.lensward.finding.FindingCode.DEVICE_REPORT_DIFFERS;
import static org.lensward.finding.FindingCode.EYES_WILL_DIFFER;
import static org.lensward.finding.FindingCode.FORMULAS_DISAGREE;
import static org.lensward.finding.FindingCode.RESULT_BEYOND_TARGET;
import static org.lensward.finding.FindingCode.SECOND_EYE_EXPECTED;
import static org.lensward.plan.Cases.find;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.eye.DeviceReport;
import org.lensward.eye.Measured;
import org.lensward.eye.OtherReadings;
import org.lensward.eye.Specimen;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.lens.LensModel;
import org.lensward.lens.LensSite;
import org.lensward.lens.Lenses;
import org.lensward.quantity.Dioptres;

/** A lens once chosen is looked at again: do the formulas agree, will the eyes, does the device? */
class SecondLooksTest {

    private static double predicted(EyePlan plan) {
        return plan.lens().orElseThrow().kit().primary().predicted().value();
    }

    private static String signed(double dioptres) {
        return String.format(Locale.ROOT, "%+.2f D", dioptres);
    }

    @Nested
    class Given_formulas {

        private static double apart(EyePlan plan) {
            DoubleSummaryStatistics spread = plan.lens().orElseThrow().predictions().stream()
                    .mapToDouble(each -> each.predicted().value())
                    .summaryStatistics();
            return spread.getMax() - spread.getMin();
        }

        @Test
        void that_agree_within_half_a_dioptre_nothing_is_said() {
            Cases given = Cases.ordinary().measured(eye -> eye.length(24));
            assertThat(apart(Cases.plan(given))).isLessThanOrEqualTo(0.5);
            assertThat(find(given, FORMULAS_DISAGREE)).isEmpty();
        }

        @Test
        void that_disagree_in_an_unusual_eye_are_named_with_how_far() {
            LensModel low = Lenses.madeIn(Lenses.bag(), Lenses.range(-5, 30, 0.5));
            EyePlan plan = Cases.plan(Cases.ordinary()
                    .measured(eye -> eye.length(28).powers(45, 45.25))
                    .catalogue(low, Lenses.sulcus(), Lenses.anteriorChamber()));
            assertThat(apart(plan)).isGreaterThan(0.5);
            assertThat(find(plan, FORMULAS_DISAGREE).orElseThrow().message())
                    .contains(String.format(Locale.ROOT, "%.2f D", apart(plan)));
        }

        @Test
        void a_converted_constant_has_no_say() {
            LensModel onlyA = Lenses.model("bag", LensSite.CAPSULAR_BAG, Lenses.aConstant(122));
            Cases given = Cases.ordinary().catalogue(onlyA, Lenses.sulcus(), Lenses.anteriorChamber());
            assertThat(Cases.plan(given).lens().orElseThrow().predictions()).hasSize(5);
            double own = Cases.plan(given).lens().orElseThrow().predictions().stream()
                    .filter(each -> !each.view().constantConverted())
                    .mapToDouble(each -> each.predicted().value())
                    .reduce((one, other) -> Math.abs(one - other))
                    .orElseThrow();
            assertThat(find(given, FORMULAS_DISAGREE).isPresent()).isEqualTo(own > 0.5);
        }
    }

    /** The policy's 0.75 D beyond the target: no source. */
    @Nested
    class Given_a_model_made_in_coarse_steps {

        private static Cases steps(double step) {
            LensModel coarse = Lenses.madeIn(Lenses.bag(), Lenses.range(6, 30, step));
            return Cases.ordinary().catalogue(coarse, Lenses.sulcus(), Lenses.anteriorChamber());
        }

        @Test
        void a_result_far_from_the_target_is_a_condition_on_the_target() {
            EyePlan plan = Cases.plan(steps(6));
            assertThat(predicted(plan)).isLessThan(-0.25 - 0.75);
            Finding finding = find(plan, RESULT_BEYOND_TARGET).orElseThrow();
            assertThat(finding.message()).contains(signed(predicted(plan)), "-0.25 D");
            assertThat(finding.evidence()).containsExactly(Cases.BOOKING.at("extension"));
            assertThat(plan.state()).isEqualTo(PlanState.PROVISIONAL);
        }

        @Test
        void half_dioptre_steps_come_near_enough() {
            assertThat(find(steps(0.5), RESULT_BEYOND_TARGET)).isEmpty();
        }
    }

    @Nested
    class Given_the_fellow_eye {

        @ParameterizedTest
        @CsvSource({"-4.00, true", "3.00, true", "-2.00, false", "0, false"})
        void more_than_two_and_a_half_dioptres_apart_the_eyes_will_differ(double refraction, boolean said) {
            assertThat(find(Cases.ordinary().fellow(refraction, Optional.empty()), EYES_WILL_DIFFER))
                    .satisfies(finding -> assertThat(finding.isPresent()).isEqualTo(said));
        }

        @Test
        void how_far_apart_they_end_is_said_with_the_fellows_evidence() {
            EyePlan plan = Cases.plan(Cases.ordinary().fellow(-4, Optional.empty()));
            Finding finding = find(plan, EYES_WILL_DIFFER).orElseThrow();
            assertThat(finding.message())
                    .contains(String.format(Locale.ROOT, "%.2f D apart", predicted(plan) + 4), "2.50 D");
            assertThat(finding.evidence()).containsExactly(Specimen.REFRACTION);
        }

        /** Half of the first eye's error: Covert et al., Ophthalmology 2010;117:49 (value from memory). */
        @Test
        void half_of_its_error_is_expected_again() {
            var error = Optional.of(new Measured<>(Dioptres.of(-0.8), Specimen.REFRACTION));
            EyePlan plan = Cases.plan(Cases.ordinary().fellow(-1, error));
            assertThat(find(plan, SECOND_EYE_EXPECTED).orElseThrow().message())
                    .contains("50 %", signed(predicted(plan) - 0.4), signed(predicted(plan)));
        }

        @Test
        void the_power_stays_the_formulas() {
            var error = Optional.of(new Measured<>(Dioptres.of(-0.8), Specimen.REFRACTION));
            assertThat(predicted(Cases.plan(Cases.ordinary().fellow(-1, error))))
                    .isEqualTo(predicted(Cases.plan(Cases.ordinary())));
            assertThat(find(Cases.ordinary(), SECOND_EYE_EXPECTED)).isEmpty();
        }
    }

    @Nested
    class Given_a_power_the_device_computed {

        private static final Evidence REPORT = new Evidence("Observation/device", "1", "value");

        private static double ours() {
            return Cases.plan(Cases.ordinary())
                    .lens()
                    .orElseThrow()
                    .chosen()
                    .powerForTarget()
                    .value();
        }

        private static Cases reported(String lens, double power) {
            DeviceReport report =
                    new DeviceReport("the device's own way", lens, new Measured<>(Dioptres.of(power), REPORT));
            return Cases.ordinary().recorded(new OtherReadings(Optional.empty(), Optional.empty(), List.of(report)));
        }

        @Test
        void near_ours_it_is_shown_beside_it() {
            EyePlan plan = Cases.plan(reported("DeviceDefinition/bag", ours() + 0.3));
            Finding finding = find(plan, DEVICE_REPORTED).orElseThrow();
            assertThat(finding.message())
                    .startsWith("Device-reported: the device's own way")
                    .contains(
                            String.format(Locale.ROOT, "%.2f D", ours()),
                            String.format(Locale.ROOT, "%.2f D", ours() + 0.3));
            assertThat(finding.evidence()).containsExactly(REPORT);
            assertThat(find(plan, DEVICE_REPORT_DIFFERS)).isEmpty();
        }

        @ParameterizedTest
        @ValueSource(doubles = {-0.8, 0.8})
        void far_from_ours_it_is_a_caution(double away) {
            EyePlan plan = Cases.plan(reported("DeviceDefinition/bag", ours() + away));
            assertThat(find(plan, DEVICE_REPORT_DIFFERS).orElseThrow().message())
                    .contains("0.80 D away");
            assertThat(find(plan, DEVICE_REPORTED)).isEmpty();
        }

        @Test
        void for_another_model_it_says_nothing() {
            EyePlan plan = Cases.plan(reported("DeviceDefinition/sulcus", ours() + 5));
            assertThat(find(plan, DEVICE_REPORT_DIFFERS)).isEmpty();
            assertThat(find(plan, DEVICE_REPORTED)).isEmpty();
        }

        @Test
        void it_never_changes_the_lens_and_belongs_to_the_basis() {
            EyePlan plan = Cases.plan(reported("DeviceDefinition/bag", ours() + 5));
            assertThat(plan.lens().orElseThrow().kit())
                    .isEqualTo(Cases.plan(Cases.ordinary()).lens().orElseThrow().kit());
            assertThat(plan.basis()).extracting(Evidence::resource).contains("Observation/device");
        }
    }
}
