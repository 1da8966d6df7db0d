package org.lensward.risk.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.OPENING_MARGIN_THIN;
import static org.lensward.finding.FindingCode.OPENING_MAY_CONTRACT;
import static org.lensward.finding.FindingCode.OPENING_PLANNED_SMALL;
import static org.lensward.finding.FindingCode.OPTIC_DIAMETER_UNKNOWN;
import static org.lensward.risk.opening.OpeningCandidate.codes;
import static org.lensward.risk.opening.OpeningCandidate.message;
import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;
import static org.lensward.risk.opening.OpeningTechnique.TORN_BY_HAND;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Sign;

/** How wide the capsule is to be opened. Areas lost: Hayashi et al. 1998, abstracts read; the other values common practice, no source. */
class OpeningSizesTest {

    private static final double HUNDREDTH = 0.005;

    /** The laser alone. */
    private static final OpeningPolicy LASER =
            Openings.having(Set.of(DYE_LASER_COAGULATION), Openings.dyes(Openings.PROTOCOL));

    private static OpeningSize size(OpeningCandidate candidate) {
        return candidate.plan().size().orElseThrow();
    }

    @Test
    void an_ordinary_eye_has_the_preferred_opening() {
        OpeningSize size = size(OpeningCandidate.reference());
        assertThat(size.diameter().value()).isEqualTo(5.25);
        // 5.25 sqrt(0.9)
        assertThat(size.healed().value()).isCloseTo(4.98, within(HUNDREDTH));
        assertThat(size.asMade().least().value()).isCloseTo(0.275, within(1e-9));
        assertThat(size.capped()).isFalse();
        assertThat(OpeningCandidate.reference().plan().findings()).isEmpty();
    }

    /** wanted = preferred sqrt(0.9) / sqrt(1 - f), at most 6 - 2 (0.25 + 0.1) = 5.3 mm; worked by hand. */
    @ParameterizedTest
    @CsvSource({
        "PSEUDOEXFOLIATION,    25, 5.30, 4.59",
        "RETINITIS_PIGMENTOSA, 45, 5.30, 3.93",
        "UVEITIS,              20, 5.30, 4.74"
    })
    void an_eye_that_contracts_more_is_opened_as_wide_as_the_overlap_allows(
            Sign sign, double lost, double made, double healed) {
        OpeningSize size = size(OpeningCandidate.reference().with(sign));
        assertThat(size.areaLost().value()).isEqualTo(lost);
        assertThat(size.diameter().value()).isCloseTo(made, within(1e-9));
        assertThat(size.healed().value()).isCloseTo(healed, within(HUNDREDTH));
        assertThat(size.capped()).isTrue();
    }

    @Test
    void the_strongest_contraction_counts() {
        assertThat(size(OpeningCandidate.reference().with(Sign.DIABETES, Sign.PSEUDOEXFOLIATION, Sign.HIGH_MYOPIA))
                        .areaLost()
                        .value())
                .isEqualTo(25);
    }

    @Test
    void contraction_is_a_finding_with_its_sign_and_figures() {
        OpeningPlan plan =
                OpeningCandidate.reference().with(Sign.RETINITIS_PIGMENTOSA).plan();
        assertThat(codes(plan.findings())).containsExactly(OPENING_MAY_CONTRACT);
        assertThat(plan.findings().get(0).message())
                .isEqualTo("The capsule may contract (retinitis pigmentosa): 45.0 % of the opening's area instead of"
                        + " 10.0 %; planned at 5.30 mm, no wider for the overlap's sake, it would heal to 3.93 mm.");
        assertThat(plan.findings().get(0).evidence()).hasToString("[Condition/retinitis_pigmentosa.code]");
    }

    /** Under 7 mm the preferred opening is 6.25; 15 % of area lost asks for 6.25 sqrt(0.9 / 0.85) = 6.43, and 6.3 is allowed. */
    @Test
    void the_same_rim_is_kept_for_another_optic() {
        assertThat(size(OpeningCandidate.reference().optic(7)).diameter().value())
                .isEqualTo(6.25);
        assertThat(size(OpeningCandidate.reference().optic(7).with(Sign.DIABETES))
                        .diameter()
                        .value())
                .isEqualTo(6.3);
    }

    @Test
    void a_small_optic_asks_for_a_small_opening_and_says_so() {
        OpeningPlan plan = OpeningCandidate.reference().optic(5.5).plan();
        assertThat(plan.size().orElseThrow().diameter().value()).isEqualTo(4.75);
        assertThat(message(plan.findings(), OPENING_PLANNED_SMALL))
                .isEqualTo("Under an optic of 5.50 mm the opening is planned at 4.75 mm;"
                        + " openings below 5.00 mm are apt to contract.");
    }

    /** Trade practice: coagulated edges are kept at about 5.8 mm under a 6.0 mm optic (common practice, no source). */
    @Test
    void a_coagulated_opening_is_kept_large_and_its_thin_margin_is_said_openly() {
        OpeningPlan plan = OpeningCandidate.reference().plan(LASER);
        assertThat(plan.size().orElseThrow().diameter().value()).isCloseTo(5.8, within(1e-9));
        // 5.8 sqrt(0.9)
        assertThat(plan.size().orElseThrow().healed().value()).isCloseTo(5.50, within(HUNDREDTH));
        assertThat(message(plan.findings(), OPENING_MARGIN_THIN))
                .isEqualTo("An opening of 5.80 mm under an optic of 6.00 mm, 0.10 mm off centre, leaves 0.00 mm of"
                        + " capsule over its edge; less than 0.25 mm is thin.");
    }

    @Test
    void without_the_optics_diameter_there_is_a_finding_and_no_diameter() {
        OpeningPlan plan = OpeningCandidate.reference().withoutOptic().plan();
        assertThat(plan.technique()).contains(TORN_BY_HAND);
        assertThat(plan.size()).isEmpty();
        assertThat(codes(plan.findings())).containsExactly(OPTIC_DIAMETER_UNKNOWN);
        assertThat(plan.steps())
                .contains("Tear an opening of the diameter the surgeon decides, centred on the lens's axis.");
    }

    @ParameterizedTest
    @CsvSource({"0.5", "0.72"})
    void an_optic_too_small_for_any_opening_is_as_good_as_unknown(double optic) {
        assertThat(OpeningCandidate.reference().optic(optic).plan().size()).isEmpty();
    }

    @Test
    void an_optic_with_room_for_next_to_nothing_still_has_an_opening() {
        assertThat(size(OpeningCandidate.reference().optic(0.77)).diameter().value())
                .isEqualTo(0.05);
    }

    /** The chain of formulas of the class, with a wide cap: the opening ends as wide as in the usual eye. */
    @Test
    void where_the_overlap_leaves_room_the_opening_ends_as_wide_as_in_the_usual_eye() {
        OpeningSize usual = size(OpeningCandidate.reference());
        OpeningPolicy loose = OpeningPolicies.withoutLeastOverlap(Openings.policy());
        OpeningSize wider = OpeningCandidate.reference()
                .with(Sign.DIABETES)
                .plan(loose)
                .size()
                .orElseThrow();
        assertThat(wider.capped()).isFalse();
        assertThat(wider.diameter()).isGreaterThan(usual.diameter());
        // planned in steps of 0.05 mm, downwards
        assertThat(wider.healed().value())
                .isBetween(usual.healed().value() - 0.05, usual.healed().value());
    }
}
