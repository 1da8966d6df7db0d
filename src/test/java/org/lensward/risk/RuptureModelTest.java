package org.lensward.risk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Sign;

/** What is said of a risk besides its number. */
class RuptureModelTest {

    @Test
    void nothing_known_the_risk_is_the_baseline_and_all_is_listed_as_unknown() {
        RuptureRisk risk = Candidate.reference().unknown().risk();
        assertThat(risk.probability().value()).isCloseTo(0.0075, within(1e-12));
        assertThat(risk.factors()).isEmpty();
        assertThat(risk.unknown())
                .containsExactly(
                        "age",
                        "sex",
                        "glaucoma",
                        "diabetic retinopathy",
                        "brown or white lens",
                        "fundus not seen",
                        "pseudoexfoliation",
                        "phacodonesis",
                        "doxazosin",
                        "cannot lie flat",
                        "dilated pupil",
                        "axial length",
                        "surgeon's grade");
    }

    @Nested
    class Given_pseudoexfoliation_and_phacodonesis {

        private final RuptureRisk risk = Candidate.reference()
                .with(Sign.PSEUDOEXFOLIATION, Sign.PHACODONESIS)
                .risk();

        @Test
        void the_one_factor_of_the_paper_counts_once() {
            assertThat(risk.oddsRatio().value()).isCloseTo(2.92, within(1e-12));
            assertThat(risk.factors()).hasSize(1);
        }

        @Test
        void either_known_the_other_need_not_be() {
            RuptureRisk either = Candidate.reference()
                    .with(Sign.PHACODONESIS)
                    .silentAbout(Sign.PSEUDOEXFOLIATION)
                    .risk();
            assertThat(either.oddsRatio().value()).isCloseTo(2.92, within(1e-12));
            assertThat(either.unknown()).isEmpty();
        }
    }

    @Test
    void factors_stand_strongest_first_each_with_its_evidence() {
        RuptureRisk risk = Candidate.reference()
                .age(77)
                .with(Sign.GLAUCOMA, Sign.DOXAZOSIN)
                .risk();
        assertThat(risk.factors())
                .extracting(factor -> factor.words() + " " + factor.evidence())
                .containsExactly(
                        "doxazosin Condition/doxazosin.code",
                        "age 77 Patient/p1.birthDate",
                        "glaucoma Condition/glaucoma.code");
    }

    @Test
    void a_birthday_on_the_day_of_the_operation_counts() {
        RuptureRisk risk = Candidate.reference().age(70).risk();
        assertThat(risk.factors()).extracting(RiskFactor::words).containsExactly("age 70");
    }
}
