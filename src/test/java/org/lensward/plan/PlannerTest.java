package org.lensward.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.AXIAL_LENGTH_UNUSUAL;
import static org.lensward.finding.FindingCode.BACK_UP_LENS_MISSING;
import static org.lensward.finding.FindingCode.BIOMETRY_BEFORE_EYE_SURGERY;
import static org.lensward.finding.FindingCode.BIOMETRY_EXPIRED;
import static org.lensward.finding.FindingCode.BOOKING_WITHOUT_EYE;
import static org.lensward.finding.FindingCode.CONSTANT_MISSING;
import static org.lensward.finding.FindingCode.CORNEA_AFTER_LASER;
import static org.lensward.finding.FindingCode.LENS_MODEL_NOT_CHOSEN;
import static org.lensward.finding.FindingCode.LENS_MODEL_UNKNOWN;
import static org.lensward.finding.FindingCode.POWER_NOT_MADE;
import static org.lensward.finding.FindingCode.SILICONE_OIL_IN_EYE;
import static org.lensward.finding.FindingCode.TARGET_NOT_RECORDED;

import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.eye.BiometryMethod;
import org.lensward.eye.Laterality;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Severity;
import org.lensward.lens.LensSite;
import org.lensward.lens.Lenses;

/** Ready, provisional or withheld, and why. */
class PlannerTest {

    private static List<FindingCode> withholding(EyePlan plan) {
        return plan.findings().stream()
                .filter(finding -> finding.severity() == Severity.WITHHOLDS)
                .map(Finding::code)
                .toList();
    }

    private static List<FindingCode> codes(EyePlan plan) {
        return plan.findings().stream().map(Finding::code).toList();
    }

    @Nested
    class Given_nothing_to_settle {

        private final EyePlan plan = Cases.plan(Cases.ordinary());

        @Test
        void the_plan_is_ready() {
            assertThat(plan.state()).isEqualTo(PlanState.READY);
            assertThat(plan.findings()).noneMatch(finding -> finding.severity().compareTo(Severity.CONDITION) <= 0);
            assertThat(plan.policyVersion()).isEqualTo("test-1");
        }

        @Test
        void exactly_one_formula_chose_the_lens_and_predicts_what_the_kit_promises() {
            LensPlan lens = plan.lens().orElseThrow();
            assertThat(lens.predictions()).hasSize(5);
            assertThat(lens.predictions().stream().filter(Prediction::chosen)).hasSize(1);
            assertThat(lens.chosen().predicted()).isEqualTo(lens.kit().primary().predicted());
        }

        @Test
        void the_lens_leaves_the_eye_at_the_target_or_less_than_half_a_dioptre_myopic_of_it() {
            LensPlan lens = plan.lens().orElseThrow();
            assertThat(lens.target().value()).isEqualTo(-0.25);
            assertThat(lens.chosen().predicted().value() - lens.target().value())
                    .isBetween(-0.5, 1e-6);
        }

        @Test
        void the_power_for_the_target_meets_it_in_every_formula() {
            LensPlan lens = plan.lens().orElseThrow();
            assertThat(lens.predictions()).allSatisfy(each -> assertThat(
                            each.view().eye().refraction(each.powerForTarget()).value())
                    .isCloseTo(-0.25, within(1e-9)));
        }

        @Test
        void the_basis_names_each_resource_once_in_order_and_whole() {
            assertThat(plan.basis())
                    .isSorted()
                    .doesNotHaveDuplicates()
                    .allMatch(evidence -> evidence.field().isEmpty())
                    .extracting(Evidence::resource)
                    .containsExactly(
                            "DeviceDefinition/bag",
                            "DeviceDefinition/chamber",
                            "DeviceDefinition/sulcus",
                            "Observation/cornea",
                            "Observation/depth",
                            "Observation/fellow-cornea",
                            "Observation/fellow-length",
                            "Observation/length",
                            "Patient/p1",
                            "ServiceRequest/b1");
        }
    }

    @Nested
    class Given_a_condition {

        @Test
        void the_plan_is_provisional_and_keeps_its_lens() {
            EyePlan plan = Cases.plan(Cases.ordinary().measured(eye -> eye.length(26.7)));
            assertThat(plan.state()).isEqualTo(PlanState.PROVISIONAL);
            assertThat(codes(plan)).contains(AXIAL_LENGTH_UNUSUAL);
            assertThat(plan.lens()).isPresent();
        }

        @Test
        void a_missing_back_up_makes_it_provisional() {
            EyePlan plan = Cases.plan(Cases.ordinary().catalogue(Lenses.bag(), Lenses.sulcus()));
            assertThat(plan.state()).isEqualTo(PlanState.PROVISIONAL);
            assertThat(codes(plan)).contains(BACK_UP_LENS_MISSING);
        }

        @Test
        void a_target_nobody_recorded_is_the_policys() {
            EyePlan plan = Cases.plan(Cases.ordinary().withoutTarget());
            assertThat(plan.state()).isEqualTo(PlanState.PROVISIONAL);
            assertThat(codes(plan)).contains(TARGET_NOT_RECORDED);
            assertThat(plan.lens().orElseThrow().target().value()).isZero();
        }
    }

    @Nested
    class Given_a_reason_to_withhold {

        private void assertWithheld(Cases given, FindingCode... reasons) {
            EyePlan plan = Cases.plan(given);
            assertThat(plan.state()).isEqualTo(PlanState.WITHHELD);
            assertThat(plan.lens()).isEmpty();
            assertThat(withholding(plan)).containsExactlyInAnyOrder(reasons);
        }

        @ParameterizedTest
        @EnumSource
        void found_while_reading_no_lens_is_proposed(FindingCode code) {
            EyePlan plan = Cases.plan(Cases.ordinary().found(new Finding(code, "as read", List.of(Cases.BOOKING))));
            PlanState expected =
                    switch (code.severity()) {
                        case WITHHOLDS -> PlanState.WITHHELD;
                        case CONDITION -> PlanState.PROVISIONAL;
                        case CAUTION, NOTE -> PlanState.READY;
                    };
            assertThat(plan.state()).isEqualTo(expected);
            assertThat(codes(plan)).contains(code);
        }

        @ParameterizedTest
        @CsvSource({
            "CORNEA_RESHAPED, CORNEA_AFTER_LASER",
            "KERATOCONUS, CORNEA_IRREGULAR",
            "CORNEAL_GRAFT, CORNEA_IRREGULAR",
            "SILICONE_OIL, SILICONE_OIL_IN_EYE",
            "APHAKIA, LENS_ALREADY_OUT",
            "PSEUDOPHAKIA, LENS_ALREADY_OUT"
        })
        void in_the_eyes_history(Sign sign, FindingCode reason) {
            assertWithheld(Cases.ordinary().signs(sign), reason);
        }

        @Test
        void in_the_age_of_the_biometry() {
            assertWithheld(Cases.ordinary().operatedOn(Cases.OPERATION.minusDays(3)), BIOMETRY_BEFORE_EYE_SURGERY);
        }

        @Test
        void in_a_lens_model_nobody_knows() {
            assertWithheld(Cases.ordinary().naming("DeviceDefinition/none"), LENS_MODEL_UNKNOWN);
        }

        @Test
        void in_a_named_model_that_is_not_for_the_bag() {
            assertWithheld(Cases.ordinary().naming("DeviceDefinition/sulcus"), LENS_MODEL_UNKNOWN);
        }

        @Test
        void in_a_choice_of_models_nobody_made() {
            assertWithheld(
                    Cases.ordinary()
                            .catalogue(Lenses.bag(), Lenses.model("other", LensSite.CAPSULAR_BAG, Lenses.CONSTANTS)),
                    LENS_MODEL_NOT_CHOSEN);
        }

        @Test
        void in_a_method_without_constants() {
            assertWithheld(
                    Cases.ordinary().measured(eye -> eye.by(BiometryMethod.IMMERSION_ULTRASOUND)), CONSTANT_MISSING);
        }

        @Test
        void in_a_power_that_is_not_made() {
            assertWithheld(Cases.ordinary().measured(eye -> eye.length(31)), POWER_NOT_MADE);
        }

        @Test
        void several_at_once_are_all_said() {
            Cases given = Cases.ordinary()
                    .signs(Sign.SILICONE_OIL, Sign.CORNEA_RESHAPED)
                    .operatedOn(Cases.OPERATION.minusDays(3))
                    .naming("DeviceDefinition/none")
                    .found(Finding.of(FindingCode.DATE_MISSING, Cases.BOOKING, "axial length"));
            assertWithheld(
                    given,
                    SILICONE_OIL_IN_EYE,
                    CORNEA_AFTER_LASER,
                    BIOMETRY_BEFORE_EYE_SURGERY,
                    LENS_MODEL_UNKNOWN,
                    FindingCode.DATE_MISSING);
        }

        @Test
        void without_biometry_the_faults_of_lens_and_target_are_said_too() {
            Finding missing = Finding.of(FindingCode.AXIAL_LENGTH_MISSING, Cases.BOOKING, "right");
            EyePlan plan = Cases.plan(Cases.ordinary()
                    .unmeasured()
                    .withoutTarget()
                    .naming("DeviceDefinition/none")
                    .found(missing));
            assertThat(codes(plan)).contains(FindingCode.AXIAL_LENGTH_MISSING, LENS_MODEL_UNKNOWN, TARGET_NOT_RECORDED);
        }

        @Test
        void without_an_eye_neither_lens_nor_risk_is_planned() {
            EyePlan plan =
                    Cases.plan(Cases.ordinary().withoutEye().found(Finding.of(BOOKING_WITHOUT_EYE, Cases.BOOKING)));
            assertThat(plan.state()).isEqualTo(PlanState.WITHHELD);
            assertThat(plan.rupture()).isEmpty();
        }

        @Test
        void the_risk_of_a_known_eye_is_still_named() {
            assertThat(Cases.plan(Cases.ordinary().signs(Sign.SILICONE_OIL)).rupture())
                    .isPresent();
        }

        @Test
        void expired_biometry_is_not_planned_with() {
            Cases old = Cases.ordinary()
                    .measured(eye -> Specimen.ordinary(Laterality.RIGHT, Cases.OPERATION.minusMonths(25)));
            assertWithheld(old, BIOMETRY_EXPIRED);
        }
    }

    @Test
    void a_named_model_comes_before_the_house_lens() {
        EyePlan plan = Cases.plan(Cases.ordinary()
                .naming("DeviceDefinition/other")
                .catalogue(
                        Lenses.houseLens(Lenses.bag()),
                        Lenses.model("other", LensSite.CAPSULAR_BAG, Lenses.CONSTANTS)));
        assertThat(plan.lens().orElseThrow().kit().primary().model().name()).isEqualTo("the other lens");
    }

    @Test
    void findings_stand_gravest_first_then_by_code_each_once() {
        Finding twice = Finding.of(FindingCode.DATE_MISSING, Cases.BOOKING, "axial length");
        EyePlan plan = Cases.plan(Cases.ordinary()
                .found(twice, twice)
                .signs(Sign.TAMSULOSIN, Sign.SILICONE_OIL)
                .withoutTarget());
        assertThat(plan.findings())
                .doesNotHaveDuplicates()
                .isSortedAccordingTo(Comparator.comparing(Finding::severity).thenComparing(Finding::code));
        assertThat(codes(plan).subList(0, 3))
                .containsExactly(FindingCode.DATE_MISSING, SILICONE_OIL_IN_EYE, TARGET_NOT_RECORDED);
    }
}
