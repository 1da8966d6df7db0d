package org.lensward.risk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.ALLERGY;
import static org.lensward.finding.FindingCode.CAPSULE_RUPTURE_LIKELIER;
import static org.lensward.finding.FindingCode.IRIS_MAY_BE_FLOPPY;
import static org.lensward.finding.FindingCode.LENS_WHITE_OR_BROWN;
import static org.lensward.finding.FindingCode.RISK_FACTORS_UNKNOWN;
import static org.lensward.finding.FindingCode.ZONULES_WEAK;

import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Severity;

/** What the team is told to prepare for. */
class EyeRisksTest {

    private static List<Finding> name(Candidate candidate) {
        return new EyeRisks(Risks.policy()).name(candidate.person(), candidate.eye(), candidate.risk());
    }

    private static List<FindingCode> codes(Candidate candidate) {
        return name(candidate).stream().map(Finding::code).toList();
    }

    @Test
    void of_the_reference_nothing_is_said() {
        assertThat(name(Candidate.reference())).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "PHACODONESIS, ZONULES_WEAK",
        "LENS_DISLOCATION, ZONULES_WEAK",
        "PSEUDOEXFOLIATION, ZONULES_WEAK",
        "VITRECTOMY, ZONULES_WEAK",
        "TAMSULOSIN, IRIS_MAY_BE_FLOPPY",
        "DOXAZOSIN, IRIS_MAY_BE_FLOPPY",
        "OTHER_ALPHA_BLOCKER, IRIS_MAY_BE_FLOPPY",
        "BROWN_OR_WHITE_LENS, LENS_WHITE_OR_BROWN",
        "SWOLLEN_LENS, LENS_WHITE_OR_BROWN",
        "FUNDUS_NOT_SEEN, FUNDUS_NOT_SEEN"
    })
    void each_sign_has_its_finding(Sign sign, FindingCode code) {
        assertThat(codes(Candidate.reference().with(sign))).contains(code);
        assertThat(codes(Candidate.reference())).doesNotContain(code);
    }

    @Test
    void signs_of_one_risk_share_a_finding_with_the_evidence_of_each() {
        Finding finding = name(Candidate.reference().with(Sign.TAMSULOSIN, Sign.OTHER_ALPHA_BLOCKER))
                .get(0);
        assertThat(finding.code()).isEqualTo(IRIS_MAY_BE_FLOPPY);
        assertThat(finding.message())
                .isEqualTo("The patient takes or took tamsulosin, other alpha blocker: the iris may be floppy.");
        assertThat(finding.evidence())
                .extracting(Object::toString)
                .containsExactly("Condition/tamsulosin.code", "Condition/other_alpha_blocker.code");
    }

    @Test
    void every_allergy_is_named() {
        Finding finding =
                name(Candidate.reference().allergicTo("iodine", "latex")).get(0);
        assertThat(finding.code()).isEqualTo(ALLERGY);
        assertThat(finding.message()).endsWith("iodine, latex.");
        assertThat(finding.evidence()).hasSize(2);
    }

    @Nested
    class Given_a_higher_risk_of_rupture {

        @Test
        void below_the_policys_ratio_of_two_nothing_is_said() {
            assertThat(codes(Candidate.reference().age(77).with(Sign.GLAUCOMA))).isEmpty();
        }

        @Test
        void from_it_on_the_three_strongest_factors_are_named() {
            Finding finding = name(Candidate.reference()
                            .age(92)
                            .with(Sign.GLAUCOMA, Sign.DIABETIC_RETINOPATHY, Sign.CANNOT_LIE_FLAT))
                    .get(0);
            assertThat(finding.code()).isEqualTo(CAPSULE_RUPTURE_LIKELIER);
            assertThat(finding.severity()).isEqualTo(Severity.CAUTION);
            // 2.37 x 1.63 x 1.30 x 1.27 = 6.378
            assertThat(finding.message())
                    .contains("6.4 times likelier", "chiefly: age 92, diabetic retinopathy, glaucoma.");
            assertThat(finding.evidence()).hasSize(4);
        }
    }

    @Test
    void what_is_unknown_is_noted_once() {
        List<Finding> found =
                name(Candidate.reference().silentAbout(Sign.GLAUCOMA).withoutPupil());
        assertThat(found).extracting(Finding::code).containsExactly(RISK_FACTORS_UNKNOWN);
        assertThat(found.get(0).message()).contains("glaucoma, dilated pupil.");
        assertThat(found.get(0).severity()).isEqualTo(Severity.NOTE);
    }

    @Test
    void risks_stand_in_a_fixed_order() {
        assertThat(codes(Candidate.reference()
                        .with(Sign.TAMSULOSIN, Sign.PHACODONESIS, Sign.SWOLLEN_LENS)
                        .allergicTo("iodine")))
                .containsExactly(
                        CAPSULE_RUPTURE_LIKELIER, ALLERGY, LENS_WHITE_OR_BROWN, ZONULES_WEAK, IRIS_MAY_BE_FLOPPY);
    }
}
