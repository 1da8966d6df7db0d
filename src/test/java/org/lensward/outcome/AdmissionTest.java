package org.lensward.outcome;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.outcome.Operated.DAY;
import static org.lensward.outcome.Operated.POLICY;
import static org.lensward.outcome.Operated.cylinder;
import static org.lensward.outcome.Operated.refracted;
import static org.lensward.outcome.Operated.written;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Laterality;
import org.lensward.eye.Specimen;
import org.lensward.lens.LensSite;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;

/** Which eyes count. The windows and limits are the shipped policy's; what each absence costs is common practice, no source. */
class AdmissionTest {

    private static final Laterality RIGHT = Laterality.RIGHT;

    private static Exclusion reason(Operated eye) {
        return ((Admitted.Excluded) eye.admitted()).reason();
    }

    private static AfterSurgery course(boolean told, Set<Complication> complications, Optional<LocalDate> exchanged) {
        return new AfterSurgery(told, complications, exchanged, List.of(refracted(RIGHT, 28)), Optional.empty());
    }

    @Test
    void an_ordinary_eye_counts_with_the_error_of_every_formula_that_saw_it() {
        Admitted.Counted counted = Operated.ordinary().counted();
        assertThat(counted.seen())
                .containsOnlyKeys(FormulaName.SRK_T, FormulaName.T2, FormulaName.HOLLADAY_1, FormulaName.HOFFER_Q);
        ThinEye thin = Objects.requireNonNull(counted.seen().get(FormulaName.SRK_T));
        double predicted = thin.refraction(Dioptres.of(21)).value();
        assertThat(counted.error(FormulaName.SRK_T).value()).isCloseTo(-0.25 - predicted, within(1e-12));
        assertThatThrownBy(() -> counted.error(FormulaName.HAIGIS)).hasMessageContaining("Haigis");
    }

    @Nested
    class the_operation {

        @Test
        void the_lens_is_in_the_bag_and_the_record_says_so() {
            assertThat(reason(Operated.ordinary().site(Optional.empty()))).isEqualTo(Exclusion.SITE_NOT_TOLD);
            assertThat(reason(Operated.ordinary().site(Optional.of(LensSite.SULCUS))))
                    .isEqualTo(Exclusion.NOT_IN_THE_BAG);
        }

        @Test
        void it_went_as_planned_and_the_record_says_so() {
            assertThat(reason(Operated.ordinary().after(course(false, Set.of(), Optional.empty()))))
                    .isEqualTo(Exclusion.COMPLICATIONS_NOT_TOLD);
            assertThat(reason(Operated.ordinary()
                            .after(course(true, Set.of(Complication.VITREOUS_LOSS), Optional.empty()))))
                    .isEqualTo(Exclusion.COMPLICATED);
            assertThat(Operated.ordinary()
                            .after(course(true, Set.of(Complication.IRIS_INJURY), Optional.empty()))
                            .admitted())
                    .isInstanceOf(Admitted.Counted.class);
        }

        @Test
        void the_refraction_is_of_the_lens_implanted() {
            assertThat(reason(Operated.ordinary().after(course(true, Set.of(), Optional.of(DAY.plusDays(28))))))
                    .isEqualTo(Exclusion.LENS_EXCHANGED);
            assertThat(Operated.ordinary()
                            .after(course(true, Set.of(), Optional.of(DAY.plusDays(29))))
                            .admitted())
                    .isInstanceOf(Admitted.Counted.class);
        }
    }

    @Nested
    class what_the_plan_rested_on {

        @Test
        void the_biometry_is_there_of_this_eye_and_from_before() {
            assertThat(reason(Operated.ordinary().biometry(Optional.empty()))).isEqualTo(Exclusion.NO_BIOMETRY);
            assertThat(reason(Operated.ordinary()
                            .biometry(Optional.of(Specimen.ordinary(Laterality.LEFT, DAY.minusDays(1))
                                    .biometry()))))
                    .isEqualTo(Exclusion.BIOMETRY_OF_THE_OTHER_EYE);
            assertThat(reason(Operated.ordinary()
                            .biometry(Optional.of(
                                    Specimen.ordinary(RIGHT, DAY.plusDays(1)).biometry()))))
                    .isEqualTo(Exclusion.BIOMETRY_AFTER_SURGERY);
        }

        @Test
        void there_are_constants_and_a_prediction() {
            assertThat(reason(Operated.ordinary().constants(Optional.empty()))).isEqualTo(Exclusion.NO_CONSTANTS);
            LensConstants nowhere = LensConstants.published(
                    Optional.of(PureNumber.of(60)), Optional.empty(), Optional.empty(), Optional.empty());
            LensConstants none =
                    LensConstants.published(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
            assertThat(reason(Operated.ordinary().constants(Optional.of(none)))).isEqualTo(Exclusion.NO_CONSTANTS);
            assertThat(reason(Operated.ordinary().constants(Optional.of(nowhere))))
                    .isEqualTo(Exclusion.NO_PREDICTION);
        }
    }

    @Nested
    class the_refraction {

        @Test
        void is_of_this_eye_and_inside_the_window() {
            assertThat(reason(Operated.ordinary().with())).isEqualTo(Exclusion.NO_REFRACTION);
            assertThat(reason(Operated.ordinary().with(refracted(Laterality.LEFT, 28))))
                    .isEqualTo(Exclusion.REFRACTION_OF_THE_OTHER_EYE);
            assertThat(reason(Operated.ordinary().with(refracted(RIGHT, -3))))
                    .isEqualTo(Exclusion.REFRACTION_BEFORE_SURGERY);
            assertThat(reason(Operated.ordinary().with(refracted(RIGHT, 20)))).isEqualTo(Exclusion.REFRACTED_TOO_EARLY);
            assertThat(reason(Operated.ordinary().with(refracted(RIGHT, 20), refracted(RIGHT, 91))))
                    .isEqualTo(Exclusion.REFRACTED_TOO_LATE);
        }

        @Test
        void counts_on_the_first_and_on_the_last_day_of_the_window() {
            assertThat(Operated.ordinary().with(refracted(RIGHT, 21)).admitted())
                    .isInstanceOf(Admitted.Counted.class);
            assertThat(Operated.ordinary().with(refracted(RIGHT, 90)).admitted())
                    .isInstanceOf(Admitted.Counted.class);
        }

        @Test
        void is_written_so_that_it_can_be_read() {
            Refraction bare = written(RIGHT, 28, -1, Optional.empty(), Optional.of(12.0), 1);
            assertThat(reason(Operated.ordinary().with(bare))).isEqualTo(Exclusion.CYLINDER_NOT_TOLD);
            Refraction unsigned = written(
                    RIGHT, 28, -1, Optional.of(cylinder(0.5, Refraction.Form.NOT_TOLD, 90)), Optional.of(12.0), 1);
            assertThat(reason(Operated.ordinary().with(unsigned))).isEqualTo(Exclusion.CYLINDER_FORM_NOT_TOLD);
            Refraction strong =
                    written(RIGHT, 28, -4, Optional.of(cylinder(0, Refraction.Form.PLUS, 0)), Optional.empty(), 1);
            assertThat(reason(Operated.ordinary().with(strong))).isEqualTo(Exclusion.VERTEX_NOT_TOLD);
            Refraction blurred = written(
                    RIGHT, 28, -1, Optional.of(cylinder(0.5, Refraction.Form.MINUS, 90)), Optional.of(12.0), 0.4);
            assertThat(reason(Operated.ordinary().with(blurred))).isEqualTo(Exclusion.ACUITY_TOO_POOR);
        }

        @Test
        void is_the_readable_one_where_another_is_not() {
            Refraction bare = written(RIGHT, 28, -1, Optional.empty(), Optional.of(12.0), 1);
            Admitted.Counted counted =
                    Operated.ordinary().with(bare, refracted(RIGHT, 60)).counted();
            assertThat(counted.refraction().after().value()).isEqualTo(60);
        }

        @Test
        void is_subjective_before_it_is_near_the_preferred_day() {
            Refraction objective = as(refracted(RIGHT, 28), Refraction.Way.OBJECTIVE);
            Admitted.Counted counted =
                    Operated.ordinary().with(objective, refracted(RIGHT, 80)).counted();
            assertThat(counted.refraction().after().value()).isEqualTo(80);
            assertThat(Operated.ordinary().with(objective).admitted()).isInstanceOf(Admitted.Counted.class);
        }

        @Test
        void is_the_one_nearest_to_four_weeks() {
            Admitted.Counted counted = Operated.ordinary()
                    .with(refracted(RIGHT, 22), refracted(RIGHT, 30), refracted(RIGHT, 70))
                    .counted();
            assertThat(counted.refraction().after().value()).isEqualTo(30);
        }

        private static Refraction as(Refraction refraction, Refraction.Way way) {
            return new Refraction(
                    refraction.eye(),
                    refraction.on(),
                    way,
                    refraction.sphere(),
                    refraction.cylinder(),
                    refraction.vertexDistance(),
                    refraction.acuity());
        }

        /** An instrument's refraction has no acuity beside it; a policy that takes none counts none. */
        @Test
        void may_have_to_be_subjective_and_may_do_without_acuity() {
            Refraction objective = new Refraction(
                    RIGHT,
                    DAY.plusDays(28),
                    Refraction.Way.OBJECTIVE,
                    Dioptres.of(0),
                    Optional.of(cylinder(0.5, Refraction.Form.MINUS, 90)),
                    Optional.empty(),
                    Optional.empty());
            assertThat(reason(Operated.ordinary().with(objective))).isEqualTo(Exclusion.ACUITY_NOT_TOLD);
            assertThat(under(false, true, objective)).isInstanceOf(Admitted.Counted.class);
            assertThat(((Admitted.Excluded) under(false, false, objective)).reason())
                    .isEqualTo(Exclusion.OBJECTIVE_ONLY);
        }

        private static Admitted under(boolean acuityNeeded, boolean objectiveCounts, Refraction refraction) {
            OutcomePolicy.RefractionPolicy shipped = POLICY.refraction();
            OutcomePolicy policy = new OutcomePolicy(
                    "test",
                    new OutcomePolicy.RefractionPolicy(
                            shipped.earliest(),
                            shipped.latest(),
                            shipped.preferred(),
                            shipped.poorestAcuity(),
                            acuityNeeded,
                            objectiveCounts,
                            shipped.usualVertex(),
                            shipped.vertexMattersFrom()),
                    POLICY.eyes(),
                    POLICY.groups(),
                    POLICY.learning(),
                    POLICY.complications());
            return new Admission(policy)
                    .admit(Operated.ordinary().with(refraction).eye());
        }

        /** Worked by hand: -10 D at 14 mm is -8.7719 D at the cornea, which is -9.8039 D at 12 mm. */
        @Test
        void is_moved_to_the_spectacle_plane_of_the_predictions() {
            Refraction strong =
                    written(RIGHT, 28, -10, Optional.of(cylinder(0, Refraction.Form.PLUS, 0)), Optional.of(14.0), 1);
            assertThat(Operated.ordinary()
                            .with(strong)
                            .counted()
                            .refraction()
                            .equivalent()
                            .value())
                    .isCloseTo(-9.8039, within(0.00005));
        }

        @Test
        void keeps_its_astigmatism_where_it_has_an_axis() {
            Refraction.Cylinder lost = new Refraction.Cylinder(Dioptres.of(1), Refraction.Form.MINUS, Optional.empty());
            Refraction without = written(RIGHT, 28, 0, Optional.of(lost), Optional.of(12.0), 1);
            assertThat(Operated.ordinary().with(without).counted().refraction().astigmatism())
                    .isEmpty();
            assertThat(Operated.ordinary()
                            .with(without)
                            .counted()
                            .refraction()
                            .equivalent()
                            .value())
                    .isCloseTo(-0.5, within(1e-12));
            Refraction none = written(RIGHT, 28, 0, Optional.of(lost(0)), Optional.of(12.0), 1);
            assertThat(Operated.ordinary()
                            .with(none)
                            .counted()
                            .refraction()
                            .astigmatism()
                            .orElseThrow()
                            .magnitude()
                            .value())
                    .isZero();
        }

        private static Refraction.Cylinder lost(double power) {
            return new Refraction.Cylinder(Dioptres.of(power), Refraction.Form.NOT_TOLD, Optional.empty());
        }
    }

    @Nested
    class several_eyes {

        private final Admission admission = new Admission(POLICY);

        @Test
        void of_one_patient_the_first_that_counts_counts() {
            Operated sulcus = Operated.ordinary(Laterality.LEFT).keys("p", "1").site(Optional.of(LensSite.SULCUS));
            assertThat(admission.admit(sulcus.eye())).isInstanceOf(Admitted.Excluded.class);
            assertThat(admission.admit(Operated.ordinary().keys("p", "2").eye()))
                    .isInstanceOf(Admitted.Counted.class);
            Operated later = Operated.ordinary(Laterality.LEFT).keys("p", "3").on(DAY.plusDays(1));
            assertThat(admission.admit(later.eye()))
                    .isEqualTo(new Admitted.Excluded(later.eye(), Exclusion.SECOND_EYE));
            assertThat(admission.admit(Operated.ordinary().keys("q", "4").eye()))
                    .isInstanceOf(Admitted.Counted.class);
        }

        @Test
        void the_same_operation_told_twice_counts_once() {
            admission.admit(Operated.ordinary().keys("p", "1").eye());
            assertThat(((Admitted.Excluded) admission.admit(
                                    Operated.ordinary().keys("p", "1").eye()))
                            .reason())
                    .isEqualTo(Exclusion.DUPLICATE);
            assertThat(((Admitted.Excluded) admission.admit(
                                    Operated.ordinary().keys("p", "other-id").eye()))
                            .reason())
                    .isEqualTo(Exclusion.DUPLICATE);
        }

        @Test
        void out_of_order_are_refused() {
            admission.admit(Operated.ordinary().keys("q", "1").eye());
            assertThatThrownBy(() ->
                            admission.admit(Operated.ordinary().keys("p", "2").eye()))
                    .isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> admission.admit(Operated.ordinary(Laterality.LEFT)
                            .keys("q", "3")
                            .on(DAY.minusDays(1))
                            .eye()))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void what_cannot_be_is_refused() {
        assertThatThrownBy(() -> new EyeKeys("", "1")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new EyeKeys("1", " ")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ImplantedLens("", Dioptres.of(20), Optional.empty(), Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ImplantedLens.Toric(Dioptres.of(0), Optional.of(Degrees.of(0))))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Refraction.Cylinder(Dioptres.of(-1), Refraction.Form.MINUS, Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Acuity(PureNumber.of(0))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Acuity(PureNumber.of(3.5))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> course(false, Set.of(Complication.OTHER), Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new OutcomePolicy(
                        " ",
                        POLICY.refraction(),
                        POLICY.eyes(),
                        POLICY.groups(),
                        POLICY.learning(),
                        POLICY.complications()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Interval<>(
                        Dioptres.of(1),
                        Dioptres.of(0),
                        POLICY.learning().confidence().value()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** 6/12 is 0.30 logMAR (Bailey and Lovie 1976). */
    @Test
    void acuity_has_two_scales() {
        assertThat(new Acuity(PureNumber.of(0.5)).logMar().value()).isCloseTo(0.30, within(0.005));
        assertThat(Acuity.ofLogMar(PureNumber.of(0.3)).decimal().value()).isCloseTo(0.5, within(0.005));
    }

    @Test
    void a_number_with_its_sign_is_a_cylinder_with_its_form() {
        assertThat(Refraction.Cylinder.signed(Dioptres.of(-0.75), Optional.empty()))
                .isEqualTo(new Refraction.Cylinder(Dioptres.of(0.75), Refraction.Form.MINUS, Optional.empty()));
        assertThat(Refraction.Cylinder.signed(Dioptres.of(0.75), Optional.empty())
                        .form())
                .isEqualTo(Refraction.Form.PLUS);
    }

    /** What the rupture model foretells: Narendran et al., Eye 2009;23:31. */
    @Test
    void what_counts_as_a_rupture() {
        assertThat(Complication.values())
                .filteredOn(Complication::isRupture)
                .containsExactly(
                        Complication.CAPSULE_RUPTURE, Complication.VITREOUS_LOSS, Complication.DROPPED_NUCLEUS);
    }

    /** A code serves as an id's part: 31 characters at most, as a finding's. */
    @Test
    void every_reason_has_a_code_and_words_of_its_own() {
        assertThat(Exclusion.values())
                .extracting(Exclusion::code)
                .doesNotHaveDuplicates()
                .allMatch(code -> code.length() <= 31);
        assertThat(Exclusion.values()).extracting(Exclusion::toString).doesNotHaveDuplicates();
        assertThat(Complication.RADIAL_TEAR.code()).isEqualTo("radial-tear");
        assertThat(Refraction.Way.SUBJECTIVE.code()).isEqualTo("subjective");
    }

    @Test
    void an_eye_prints_nobody() {
        assertThat(Operated.ordinary().eye().keys().toString()).doesNotContain("patient-1", "operation-1");
        assertThat(BeforeSurgery.unknown().predicted()).isEqualTo(Map.of());
    }
}
