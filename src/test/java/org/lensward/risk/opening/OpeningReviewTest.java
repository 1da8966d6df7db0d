package org.lensward.risk.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.OPENING_CENTRE_UNKNOWN;
import static org.lensward.finding.FindingCode.OPENING_DECENTRED;
import static org.lensward.finding.FindingCode.OPENING_MARGIN_THIN;
import static org.lensward.finding.FindingCode.OPENING_TOO_SMALL;
import static org.lensward.finding.FindingCode.OPTIC_DIAMETER_UNKNOWN;
import static org.lensward.finding.FindingCode.OPTIC_NOT_COVERED;
import static org.lensward.risk.opening.OpeningCandidate.codes;
import static org.lensward.risk.opening.OpeningCandidate.message;
import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;
import static org.lensward.risk.opening.OpeningTechnique.TORN_BY_HAND;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.lens.Focus;
import org.lensward.quantity.Millimetres;
import org.lensward.risk.opening.ImplantAdvice.ChooseMonofocal;
import org.lensward.risk.opening.ImplantAdvice.ChooseNonToric;
import org.lensward.risk.opening.ImplantAdvice.CoverIncomplete;
import org.lensward.risk.opening.ImplantAdvice.EnlargeFirst;
import org.lensward.risk.opening.ImplantAdvice.GoesIn;
import org.lensward.risk.opening.ImplantAdvice.Settle;

/**
 * What an opening that was made means for the lens. 0.2 to 0.3 mm off centre goes unnoticed: Ashena et al., Vision 2020;4:41 (abstract
 * read). The other limits: common practice, no source.
 */
class OpeningReviewTest {

    private static OpeningJudgement torn(OpeningCandidate candidate) {
        return candidate.judge(TORN_BY_HAND).orElseThrow();
    }

    @Test
    void an_opening_that_was_not_measured_is_not_judged() {
        assertThat(OpeningCandidate.reference().judge(TORN_BY_HAND)).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Focus.class)
    void a_fine_opening_yields_no_finding_whatever_the_lens(Focus focus) {
        OpeningJudgement judgement =
                torn(OpeningCandidate.reference().opened(5.2, 0.1).focus(focus).toric());
        assertThat(judgement.findings()).isEmpty();
        assertThat(judgement.advice()).containsExactly(new GoesIn());
        assertThat(judgement.goesIn()).isTrue();
        assertThat(judgement.overlap().orElseThrow().least().value()).isCloseTo(0.3, within(1e-9));
        assertThat(judgement.advice().get(0).words()).isEqualTo("the planned lens may go in");
    }

    @Nested
    class Given_an_opening_off_centre {

        @ParameterizedTest
        @EnumSource(
                value = Focus.class,
                names = {"MULTIFOCAL", "EXTENDED"})
        void a_lens_that_shares_the_light_becomes_a_monofocal_one(Focus focus) {
            OpeningJudgement judgement =
                    torn(OpeningCandidate.reference().opened(5.0, 0.31).focus(focus));
            assertThat(codes(judgement.findings())).contains(OPENING_DECENTRED);
            assertThat(message(judgement.findings(), OPENING_DECENTRED))
                    .isEqualTo(
                            "The opening lies 0.31 mm off centre; more than 0.30 mm puts a multifocal lens in doubt.");
            assertThat(judgement.advice()).containsExactly(new ChooseMonofocal());
            assertThat(judgement.goesIn()).isFalse();
        }

        @Test
        void at_the_limit_it_still_goes_in() {
            assertThat(torn(OpeningCandidate.reference().opened(5.0, 0.3).focus(Focus.MULTIFOCAL))
                            .goesIn())
                    .isTrue();
        }

        @Test
        void the_side_it_lies_to_does_not_matter() {
            OpeningJudgement one =
                    torn(OpeningCandidate.reference().opened(5.0, -0.35).focus(Focus.MULTIFOCAL));
            OpeningJudgement other =
                    torn(OpeningCandidate.reference().opened(5.0, 0.35).focus(Focus.MULTIFOCAL));
            assertThat(one).isEqualTo(other);
        }

        @Test
        void a_monofocal_lens_goes_in_while_it_is_covered() {
            OpeningJudgement judgement = torn(OpeningCandidate.reference().opened(5.0, 0.35));
            assertThat(judgement.goesIn()).isTrue();
            // (6 - 5) / 2 - 0.35 = 0.15
            assertThat(codes(judgement.findings())).containsOnlyOnce(OPENING_MARGIN_THIN);
            assertThat(judgement.findings()).hasSize(1);
        }

        @Test
        void a_lens_not_known_to_be_monofocal_is_settled_first() {
            OpeningJudgement judgement =
                    torn(OpeningCandidate.reference().opened(5.0, 0.35).designUnknown());
            assertThat(message(judgement.findings(), OPENING_DECENTRED)).contains("a lens not known to be monofocal");
            assertThat(judgement.advice()).hasOnlyElementsOfType(Settle.class);
            assertThat(judgement.advice().get(0).words()).startsWith("settle first: whether the lens is monofocal");
        }

        @ParameterizedTest
        @CsvSource({"0.40, true", "0.41, false"})
        void a_toric_lens_has_a_limit_of_its_own(double apart, boolean goesIn) {
            OpeningJudgement judgement =
                    torn(OpeningCandidate.reference().opened(5.0, apart).toric());
            assertThat(judgement.goesIn()).isEqualTo(goesIn);
            assertThat(judgement.advice().contains(new ChooseNonToric())).isEqualTo(!goesIn);
        }

        /** 5.2 mm, 0.4 off under 7 mm: a tenth nearer needs 5.2 + 2 x 0.1; the cover leaves 7 - 2 x 0.25. */
        @Test
        void where_the_cover_leaves_room_it_is_widened_towards_the_axis_instead() {
            OpeningJudgement judgement =
                    torn(OpeningCandidate.reference().optic(7).opened(5.2, 0.4).focus(Focus.MULTIFOCAL));
            assertThat(codes(judgement.findings())).containsExactly(OPENING_DECENTRED);
            assertThat(judgement.advice()).hasSize(1);
            EnlargeFirst widen = (EnlargeFirst) judgement.advice().get(0);
            assertThat(widen.least().value()).isCloseTo(5.4, within(1e-9));
            assertThat(widen.most().value()).isCloseTo(6.5, within(1e-9));
        }

        /** For a multifocal lens 5.0 + 2 x (0.6 - 0.3) = 5.6, for a toric one 5.4; either asks for no less than the larger. */
        @Test
        void several_reasons_to_widen_make_one_range() {
            OpeningJudgement judgement = torn(OpeningCandidate.reference()
                    .optic(7)
                    .opened(5.0, 0.6)
                    .focus(Focus.MULTIFOCAL)
                    .toric());
            assertThat(judgement.advice()).hasSize(1);
            assertThat(((EnlargeFirst) judgement.advice().get(0)).least().value())
                    .isCloseTo(5.6, within(1e-9));
        }

        @Test
        void a_toric_multifocal_lens_is_doubted_twice() {
            OpeningJudgement judgement = torn(OpeningCandidate.reference()
                    .opened(5.0, 0.45)
                    .focus(Focus.MULTIFOCAL)
                    .toric());
            assertThat(judgement.advice()).containsExactly(new ChooseMonofocal(), new ChooseNonToric());
            assertThat(judgement.advice())
                    .extracting(ImplantAdvice::words)
                    .containsExactly("choose a monofocal lens", "choose a lens without cylinder");
        }
    }

    @Nested
    class Given_a_small_opening {

        /** 6 - 2 x 0.25 = 5.5 mm leaves the cover that a torn opening is to have. */
        @Test
        void it_is_widened_to_between_the_smallest_and_what_the_cover_leaves() {
            OpeningJudgement judgement = torn(OpeningCandidate.reference().opened(4.6, 0.1));
            assertThat(codes(judgement.findings())).containsExactly(OPENING_TOO_SMALL);
            assertThat(judgement.advice()).containsExactly(new EnlargeFirst(Millimetres.of(5), Millimetres.of(5.5)));
            assertThat(judgement.advice().get(0).words())
                    .isEqualTo("widen the opening first, to 5.00 mm up to 5.50 mm");
        }

        @Test
        void just_at_the_smallest_it_is_not_small() {
            assertThat(torn(OpeningCandidate.reference().opened(5.0, 0.0)).goesIn())
                    .isTrue();
        }

        @ParameterizedTest
        @CsvSource({
            // so far off centre that the cover is thin already: (6 - 4.8) / 2 - 0.4 = 0.2
            "6.0, 4.8, 0.4",
            // an optic so small that 5 mm would leave less than 0.25 mm
            "5.4, 4.5, 0.0"
        })
        void where_the_cover_leaves_no_room_somebody_decides(double optic, double opening, double apart) {
            OpeningJudgement judgement =
                    torn(OpeningCandidate.reference().optic(optic).opened(opening, apart));
            assertThat(codes(judgement.findings())).contains(OPENING_TOO_SMALL);
            assertThat(judgement.advice()).hasOnlyElementsOfType(Settle.class);
        }
    }

    @Nested
    class Given_an_optic_that_is_not_covered {

        @Test
        void the_share_of_its_edge_that_stands_free_is_told() {
            OpeningJudgement judgement = torn(OpeningCandidate.reference().opened(5.6, 0.3));
            assertThat(codes(judgement.findings())).containsExactly(OPTIC_NOT_COVERED);
            // cos phi = (9 + 0.09 - 7.84) / (2 x 3 x 0.3) = 0.69444, phi = 46.017 degrees of 180
            assertThat(message(judgement.findings(), OPTIC_NOT_COVERED)).endsWith("25.57 % of its edge stands free.");
            assertThat(judgement.advice()).hasOnlyElementsOfType(CoverIncomplete.class);
            assertThat(judgement.advice().get(0).words())
                    .isEqualTo("the capsule leaves 25.57 % of the optic's edge free");
            assertThat(judgement.findings().get(0).evidence()).hasSize(2);
        }

        @Test
        void a_lens_whose_place_matters_is_exchanged_for_a_plainer_one() {
            OpeningJudgement judgement = torn(OpeningCandidate.reference()
                    .opened(6.2, 0.0)
                    .focus(Focus.MULTIFOCAL)
                    .toric());
            assertThat(judgement.advice()).contains(new ChooseMonofocal(), new ChooseNonToric());
        }
    }

    /** A coagulated opening of 5.8 mm under 6.0 mm is what was planned (common practice, no source). */
    @Test
    void a_coagulated_opening_is_held_to_its_own_least_overlap() {
        OpeningCandidate wide = OpeningCandidate.reference().opened(5.8, 0.1);
        assertThat(wide.judge(DYE_LASER_COAGULATION).orElseThrow().findings()).isEmpty();
        assertThat(codes(wide.judge(TORN_BY_HAND).orElseThrow().findings())).containsExactly(OPENING_MARGIN_THIN);
    }

    @Test
    void an_unknown_centre_is_settled_first() {
        OpeningJudgement judgement = torn(OpeningCandidate.reference().opened(5.2));
        assertThat(codes(judgement.findings())).containsExactly(OPENING_CENTRE_UNKNOWN);
        assertThat(judgement.advice()).containsExactly(new Settle("how far the opening lies off centre"));
        assertThat(judgement.overlap()).isEmpty();
    }

    @Test
    void an_unknown_optic_is_settled_first() {
        OpeningJudgement judgement =
                torn(OpeningCandidate.reference().opened(4.8, 0.1).withoutOptic());
        assertThat(codes(judgement.findings())).containsExactly(OPTIC_DIAMETER_UNKNOWN, OPENING_TOO_SMALL);
        assertThat(judgement.goesIn()).isFalse();
        assertThat(judgement.overlap()).isEmpty();
    }
}
