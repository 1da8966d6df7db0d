package org.lensward.risk.named;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.ALLERGY;
import static org.lensward.finding.FindingCode.ALLERGY_NOT_UNDERSTOOD;
import static org.lensward.finding.FindingCode.CAPSULE_MAY_TEAR_OUT;
import static org.lensward.finding.FindingCode.CAPSULE_RUPTURE_LIKELIER;
import static org.lensward.finding.FindingCode.CHAMBER_SHALLOW;
import static org.lensward.finding.FindingCode.CHOROID_MAY_BLEED;
import static org.lensward.finding.FindingCode.DETACHMENT_LIKELIER;
import static org.lensward.finding.FindingCode.ENDOTHELIUM_AT_RISK;
import static org.lensward.finding.FindingCode.IRIS_MAY_BE_FLOPPY;
import static org.lensward.finding.FindingCode.LENS_WHITE_OR_BROWN;
import static org.lensward.finding.FindingCode.MACULA_MAY_SWELL;
import static org.lensward.finding.FindingCode.NEEDLE_HAZARDOUS;
import static org.lensward.finding.FindingCode.PRESSURE_HIGH;
import static org.lensward.finding.FindingCode.PRESSURE_RAISED;
import static org.lensward.finding.FindingCode.PRESSURE_SPIKE_LIKELY;
import static org.lensward.finding.FindingCode.RISKS_NOT_EXCLUDED;
import static org.lensward.finding.FindingCode.RISK_FACTORS_UNKNOWN;
import static org.lensward.finding.FindingCode.ZONULES_WEAK;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Examination;
import org.lensward.eye.Eye;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Severity;
import org.lensward.quantity.CellsPerSquareMillimetre;
import org.lensward.risk.Candidate;
import org.lensward.risk.Risks;
import org.lensward.risk.preparation.Preparations;

/** What the team is told to prepare for. */
class EyeRisksTest {

    /** A woman of 65 of whom everything is known and nothing remarkable. */
    private static Candidate plain() {
        return Candidate.reference().age(65);
    }

    private static List<Finding> name(Candidate candidate) {
        return name(candidate, candidate.eye());
    }

    private static List<Finding> name(Candidate candidate, Eye eye) {
        return new EyeRisks(Risks.policy(), Preparations.policy())
                .name(new Subject(candidate.person(), eye, Candidate.OPERATION), candidate.risk());
    }

    private static List<FindingCode> codes(Candidate candidate) {
        return name(candidate).stream().map(Finding::code).toList();
    }

    private static Finding only(FindingCode code, Candidate candidate) {
        return name(candidate).stream()
                .filter(finding -> finding.code() == code)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void of_a_plain_eye_nothing_is_said() {
        assertThat(name(plain())).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "PHACODONESIS, ZONULES_WEAK",
        "LENS_DISLOCATION, ZONULES_WEAK",
        "PSEUDOEXFOLIATION, ZONULES_WEAK",
        "VITRECTOMY, ZONULES_WEAK",
        "EYE_INJURY, ZONULES_WEAK",
        "HIGH_MYOPIA, ZONULES_WEAK",
        "MARFAN_SYNDROME, ZONULES_WEAK",
        "TAMSULOSIN, IRIS_MAY_BE_FLOPPY",
        "TERAZOSIN, IRIS_MAY_BE_FLOPPY",
        "ALFUZOSIN, IRIS_MAY_BE_FLOPPY",
        "DOXAZOSIN, IRIS_MAY_BE_FLOPPY",
        "OTHER_ALPHA_BLOCKER, IRIS_MAY_BE_FLOPPY",
        "BROWN_OR_WHITE_LENS, LENS_WHITE_OR_BROWN",
        "SWOLLEN_LENS, LENS_WHITE_OR_BROWN",
        "SWOLLEN_LENS, CAPSULE_MAY_TEAR_OUT",
        "POSTERIOR_POLAR_CATARACT, CAPSULE_OPEN_BEHIND",
        "FUNDUS_NOT_SEEN, FUNDUS_NOT_SEEN",
        "CORNEA_GUTTATA, ENDOTHELIUM_AT_RISK",
        "UVEITIS, MACULA_MAY_SWELL",
        "DIABETES, MACULA_MAY_SWELL",
        "GLAUCOMA, PRESSURE_SPIKE_LIKELY",
        "PRESSURE_SPIKE_BEFORE, PRESSURE_SPIKE_LIKELY",
        "GLAUCOMA, CHOROID_MAY_BLEED",
        "LID_INFECTION, LIDS_INFECTED",
        "RESISTANT_BACTERIA, INFECTION_LIKELIER",
        "WARFARIN, BLOOD_THINNED",
        "DIRECT_ANTICOAGULANT, BLOOD_THINNED",
        "ANTIPLATELET_DRUG, BLOOD_THINNED",
        "WARFARIN, NEEDLE_HAZARDOUS",
        "STAPHYLOMA, NEEDLE_HAZARDOUS",
        "CANNOT_FIXATE, COOPERATION_IN_DOUBT",
        "CANNOT_LIE_FLAT, COOPERATION_IN_DOUBT",
        "CANNOT_COOPERATE, COOPERATION_IN_DOUBT"
    })
    void each_sign_has_its_finding(Sign sign, FindingCode code) {
        assertThat(codes(plain().with(sign))).contains(code);
        assertThat(codes(plain())).doesNotContain(code);
    }

    /** src/test/resources/published/named-risks.csv. */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/named-risks.csv", useHeadersInDisplayName = true)
    void each_ground_is_named_with_its_published_ratio(FindingCode code, String ground, String ratio) {
        assertThat(only(code, having(ground)).message()).contains(ground + " x" + ratio);
    }

    private static Candidate having(String ground) {
        if (ground.startsWith("age ")) {
            return plain().age(Integer.parseInt(ground.substring(4)));
        }
        if (ground.startsWith("axial length")) {
            return plain().length(25.01);
        }
        return ground.startsWith("pressure")
                ? plain().pressure(22)
                : plain().with(Sign.valueOf(ground.toUpperCase(Locale.ROOT).replace(' ', '_')));
    }

    @Test
    void at_the_papers_bounds_nothing_is_said() {
        assertThat(codes(plain().age(60).length(25))).doesNotContain(DETACHMENT_LIKELIER);
        assertThat(codes(plain().age(89))).doesNotContain(CHOROID_MAY_BLEED);
    }

    @Test
    void retinopathy_has_diabetes_in_it() {
        assertThat(only(MACULA_MAY_SWELL, plain().with(Sign.DIABETES, Sign.DIABETIC_RETINOPATHY))
                        .message())
                .contains("diabetic retinopathy x6.23")
                .doesNotContain("x1.8");
    }

    @Test
    void an_alpha_blocker_without_a_published_ratio_is_named_without_one() {
        assertThat(only(IRIS_MAY_BE_FLOPPY, plain().with(Sign.OTHER_ALPHA_BLOCKER))
                        .message())
                .contains("ratio: other alpha blocker. ");
    }

    @Test
    void signs_of_one_risk_share_a_finding_with_the_evidence_of_each() {
        Finding finding = only(IRIS_MAY_BE_FLOPPY, plain().with(Sign.TAMSULOSIN, Sign.DOXAZOSIN));
        assertThat(finding.message()).contains("tamsulosin x13.85, doxazosin x3.88");
        assertThat(finding.evidence())
                .extracting(Object::toString)
                .containsExactly("Condition/tamsulosin.code", "Condition/doxazosin.code");
    }

    @Test
    void every_allergy_is_named() {
        Finding finding = only(ALLERGY, plain().allergicTo("iodine", "latex"));
        assertThat(finding.message()).endsWith("iodine, latex.");
        assertThat(finding.evidence()).hasSize(2);
    }

    /** The candidate's allergies carry words alone, no code. */
    @Test
    void an_allergy_that_is_not_understood_makes_the_plan_wait_for_a_person() {
        Finding finding = only(ALLERGY_NOT_UNDERSTOOD, plain().allergicTo("the red ointment"));
        assertThat(finding.message()).contains("'the red ointment'");
        assertThat(finding.severity()).isEqualTo(Severity.CONDITION);
    }

    @Nested
    class Given_a_pressure {

        @ParameterizedTest
        @CsvSource({"21, ''", "21.5, PRESSURE_RAISED", "30, PRESSURE_RAISED", "30.5, PRESSURE_HIGH"})
        void it_is_raised_or_high_by_the_policy_and_never_both(double mercury, String named) {
            assertThat(codes(plain().pressure(mercury)))
                    .filteredOn(code -> code == PRESSURE_RAISED || code == PRESSURE_HIGH)
                    .extracting(Enum::name)
                    .containsExactlyElementsOf(named.isEmpty() ? List.of() : List.of(named));
        }

        @Test
        void that_is_raised_it_speaks_for_a_spike_and_a_bleed_too() {
            assertThat(codes(plain().pressure(25)))
                    .containsExactly(PRESSURE_RAISED, PRESSURE_SPIKE_LIKELY, CHOROID_MAY_BLEED);
        }
    }

    @Nested
    class Given_an_endothelium {

        /** Means of Chen et al., J Clin Med 2021;10:2270. */
        @ParameterizedTest
        @CsvSource({"999, 19.9", "1000, 28.9", "2000, 28.9", "2001, 15.0"})
        void the_mean_loss_is_that_of_its_group(double density, String loss) {
            assertThat(CorneaRisks.meanLoss(CellsPerSquareMillimetre.of(density)))
                    .isEqualTo(loss);
        }

        @ParameterizedTest
        @CsvSource({"1000, 0.64, false", "999, 0.64, true", "1000, 0.641, true"})
        void sparse_or_under_a_thick_cornea_it_is_at_risk(double density, double thickness, boolean named) {
            assertThat(codes(plain().endothelium(density, thickness)).contains(ENDOTHELIUM_AT_RISK))
                    .isEqualTo(named);
        }
    }

    @ParameterizedTest
    @CsvSource({"2.49, true", "2.5, false"})
    void a_chamber_below_the_policys_depth_is_shallow(double depth, boolean named) {
        Candidate plain = plain();
        Eye eye = plain.eye()
                .measured(Specimen.ordinary(plain.side(), Candidate.OPERATION)
                        .depth(depth)
                        .biometry());
        assertThat(name(plain, eye).stream().anyMatch(finding -> finding.code() == CHAMBER_SHALLOW))
                .isEqualTo(named);
    }

    @Nested
    class Given_a_white_lens {

        @Test
        void that_is_swollen_its_capsule_may_tear_out() {
            assertThat(only(CAPSULE_MAY_TEAR_OUT, plain().with(Sign.SWOLLEN_LENS))
                            .message())
                    .startsWith("The lens is swollen (swollen lens)");
        }

        @Test
        void of_which_nobody_says_whether_it_is_swollen_it_may_be() {
            Candidate white = plain().with(Sign.BROWN_OR_WHITE_LENS).silentAbout(Sign.SWOLLEN_LENS);
            assertThat(only(CAPSULE_MAY_TEAR_OUT, white).message()).startsWith("The lens may be swollen");
        }

        @Test
        void that_is_known_not_to_be_swollen_nothing_is_said() {
            assertThat(codes(plain().with(Sign.BROWN_OR_WHITE_LENS))).doesNotContain(CAPSULE_MAY_TEAR_OUT);
            assertThat(codes(plain().silentAbout(Sign.SWOLLEN_LENS))).doesNotContain(CAPSULE_MAY_TEAR_OUT);
        }
    }

    @ParameterizedTest
    @CsvSource({"0, false", "1, true"})
    void missing_zonule_is_weak_zonule(double clockHours, boolean named) {
        assertThat(codes(plain().zonuleLoss(clockHours)).contains(ZONULES_WEAK)).isEqualTo(named);
    }

    @ParameterizedTest
    @CsvSource({"26, false", "26.01, true"})
    void a_needle_is_a_hazard_above_the_policys_length(double length, boolean named) {
        assertThat(codes(plain().length(length)).contains(NEEDLE_HAZARDOUS)).isEqualTo(named);
    }

    @Nested
    class Given_a_higher_risk_of_rupture {

        @Test
        void below_the_policys_ratio_of_two_nothing_is_said() {
            assertThat(codes(plain().age(77).with(Sign.GLAUCOMA))).doesNotContain(CAPSULE_RUPTURE_LIKELIER);
        }

        @Test
        void from_it_on_the_three_strongest_factors_are_named() {
            Finding finding = only(
                    CAPSULE_RUPTURE_LIKELIER,
                    plain().age(92).with(Sign.GLAUCOMA, Sign.DIABETIC_RETINOPATHY, Sign.CANNOT_LIE_FLAT));
            assertThat(finding.severity()).isEqualTo(Severity.CAUTION);
            // 2.37 x 1.63 x 1.30 x 1.27 = 6.378
            assertThat(finding.message())
                    .contains("6.4 times likelier", "chiefly: age 92, diabetic retinopathy, glaucoma.");
            assertThat(finding.evidence()).hasSize(4);
        }
    }

    @Nested
    class Given_silence {

        @Test
        void the_factors_of_the_model_are_noted_once() {
            List<Finding> found = name(plain().silentAbout(Sign.GLAUCOMA).withoutPupil());
            assertThat(found).extracting(Finding::code).containsExactly(RISK_FACTORS_UNKNOWN);
            assertThat(found.get(0).message()).contains("glaucoma, dilated pupil.");
            assertThat(found.get(0).severity()).isEqualTo(Severity.NOTE);
        }

        @Test
        void everything_that_was_not_asked_is_unknown_and_no_risk_is_named_for_it() {
            Candidate unknown = Candidate.reference().unknown();
            assertThat(codes(unknown)).containsExactly(RISK_FACTORS_UNKNOWN, RISKS_NOT_EXCLUDED);
            assertThat(only(RISKS_NOT_EXCLUDED, unknown).message())
                    .contains(
                            "pressure inside the eye, endothelium, macula, alpha blockers, drugs that thin the blood, zonules.");
        }

        @Test
        void one_word_on_each_breaks_it() {
            Candidate asked = plain().examined(Examination.none());
            assertThat(codes(asked)).containsExactly(RISKS_NOT_EXCLUDED);
            assertThat(only(RISKS_NOT_EXCLUDED, asked).message()).contains("speak of: pressure inside the eye. ");
            assertThat(codes(plain().silentAbout(Sign.CORNEA_GUTTATA))).isEmpty();
            assertThat(codes(plain().silentAbout(Sign.PHACODONESIS, Sign.LENS_DISLOCATION, Sign.PSEUDOEXFOLIATION)))
                    .doesNotContain(RISKS_NOT_EXCLUDED);
        }
    }

    @Test
    void risks_stand_in_a_fixed_order() {
        assertThat(codes(plain().with(Sign.TAMSULOSIN, Sign.PHACODONESIS, Sign.SWOLLEN_LENS)
                        .allergicTo("iodine")))
                .containsExactly(
                        CAPSULE_RUPTURE_LIKELIER,
                        LENS_WHITE_OR_BROWN,
                        CAPSULE_MAY_TEAR_OUT,
                        ZONULES_WEAK,
                        ALLERGY,
                        ALLERGY_NOT_UNDERSTOOD,
                        IRIS_MAY_BE_FLOPPY);
    }
}
