package org.lensward.risk.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;
import static org.lensward.risk.opening.OpeningTechnique.PHOTODISRUPTION;
import static org.lensward.risk.opening.OpeningTechnique.THERMAL;
import static org.lensward.risk.opening.OpeningTechnique.TORN_BY_HAND;
import static org.lensward.risk.opening.Weighing.first;
import static org.lensward.risk.opening.Weighing.verdict;
import static org.lensward.risk.opening.Weighing.view;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.eye.Allergen;
import org.lensward.eye.Sign;

/** What speaks for and against each technique. The rules are common practice, no source, unless a test names one. */
class TechniqueWeighingTest {

    @ParameterizedTest
    @CsvSource({
        "TORN_BY_HAND, SUITS",
        "PHOTODISRUPTION, SUITS",
        "THERMAL, SUITS",
        // the strong dye asks for its protocol whatever the eye
        "DYE_LASER_COAGULATION, SUITS_WITH_CONDITIONS"
    })
    void an_ordinary_eye_of_which_all_is_known(OpeningTechnique technique, Verdict verdict) {
        assertThat(verdict(OpeningCandidate.reference(), technique)).isEqualTo(verdict);
    }

    @Test
    void every_technique_is_shown_and_those_the_hospital_lacks_are_not_available() {
        OpeningPlan plan = OpeningCandidate.reference().plan();
        assertThat(plan.views()).extracting(TechniqueView::technique).containsExactly(OpeningTechnique.values());
        assertThat(plan.view(THERMAL).verdict()).isEqualTo(Verdict.NOT_AVAILABLE);
        assertThat(plan.view(TORN_BY_HAND).verdict()).isEqualTo(Verdict.SUITS);
    }

    @Nested
    class Given_a_laser_that_docks {

        @ParameterizedTest
        @EnumSource(
                value = Sign.class,
                names = {
                    "CANNOT_FIXATE",
                    "CANNOT_LIE_FLAT",
                    "CANNOT_COOPERATE",
                    "CORNEA_IRREGULAR",
                    "CORNEAL_GRAFT",
                    "KERATOCONUS",
                    "CORNEA_INCISED"
                })
        void each_sign_forbids_it_and_silence_leaves_it_open(Sign sign) {
            assertThat(verdict(OpeningCandidate.reference().with(sign), PHOTODISRUPTION))
                    .isEqualTo(Verdict.DOES_NOT_SUIT);
            assertThat(first(OpeningCandidate.reference().with(sign), PHOTODISRUPTION)
                            .evidence())
                    .hasSize(1);
            assertThat(verdict(OpeningCandidate.reference().silentAbout(sign), PHOTODISRUPTION))
                    .isEqualTo(Verdict.UNKNOWN);
        }

        /** Opening 5.25 mm, and the policy's millimetre. */
        @ParameterizedTest
        @CsvSource({"6.24, DOES_NOT_SUIT", "6.25, SUITS"})
        void the_pupil_must_be_wider_than_the_opening_by_the_margin(double pupil, Verdict verdict) {
            assertThat(verdict(OpeningCandidate.reference().pupil(pupil), PHOTODISRUPTION))
                    .isEqualTo(verdict);
        }

        @Test
        void a_pupil_that_was_not_measured_leaves_it_open() {
            assertThat(verdict(OpeningCandidate.reference().withoutPupil(), PHOTODISRUPTION))
                    .isEqualTo(Verdict.UNKNOWN);
            assertThat(verdict(OpeningCandidate.reference().withoutOptic(), PHOTODISRUPTION))
                    .isEqualTo(Verdict.UNKNOWN);
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = OpeningTechnique.class,
            names = {"TORN_BY_HAND", "THERMAL", "DYE_LASER_COAGULATION"})
    void elsewhere_a_small_pupil_is_widened_first(OpeningTechnique technique) {
        TechniqueView view = view(OpeningCandidate.reference().pupil(4), technique);
        assertThat(view.verdict()).isEqualTo(Verdict.SUITS_WITH_CONDITIONS);
        assertThat(view.reasons()).anyMatch(reason -> reason.words().endsWith("widen it first"));
        assertThat(view(OpeningCandidate.reference().withoutPupil(), technique).reasons())
                .anyMatch(reason -> reason.words().contains("not known: the dilated pupil"));
    }

    @Nested
    class Given_no_red_reflex {

        @ParameterizedTest
        @EnumSource(
                value = Sign.class,
                names = {"BROWN_OR_WHITE_LENS", "SWOLLEN_LENS", "FUNDUS_NOT_SEEN"})
        void the_capsule_is_stained(Sign sign) {
            TechniqueView view = view(OpeningCandidate.reference().with(sign), TORN_BY_HAND);
            assertThat(view.verdict()).isEqualTo(Verdict.SUITS_WITH_CONDITIONS);
            assertThat(view.reasons()).anyMatch(reason -> reason.words()
                    .startsWith("no red reflex: stain the capsule with trypan blue 0.016 %"));
        }

        @Test
        void the_dye_of_the_laser_speaks_for_it() {
            assertThat(view(OpeningCandidate.reference().with(Sign.FUNDUS_NOT_SEEN), DYE_LASER_COAGULATION)
                            .reasons())
                    .anyMatch(reason -> reason.bearing() == Bearing.FAVOURS
                            && reason.words().startsWith("the dye it needs also shows the capsule"));
        }

        @Test
        void where_the_record_is_silent_one_looks_first() {
            OpeningCandidate silent = OpeningCandidate.reference()
                    .silentAbout(Sign.BROWN_OR_WHITE_LENS, Sign.SWOLLEN_LENS, Sign.FUNDUS_NOT_SEEN);
            assertThat(verdict(silent, TORN_BY_HAND)).isEqualTo(Verdict.SUITS_WITH_CONDITIONS);
            assertThat(first(silent, TORN_BY_HAND).words()).startsWith("look for the red reflex first");
        }

        @Test
        void a_fundus_that_was_seen_shows_the_red_reflex() {
            assertThat(verdict(
                            OpeningCandidate.reference().silentAbout(Sign.BROWN_OR_WHITE_LENS, Sign.SWOLLEN_LENS),
                            TORN_BY_HAND))
                    .isEqualTo(Verdict.SUITS);
        }

        @Test
        void a_patient_who_may_have_no_dye_is_torn_by_light_from_the_side() {
            OpeningCandidate allergic = OpeningCandidate.reference()
                    .with(Sign.FUNDUS_NOT_SEEN)
                    .allergicTo(Allergen.TRYPAN_BLUE, Allergen.IODINE);
            assertThat(first(allergic, TORN_BY_HAND).words()).contains("no dye this patient may have");
        }
    }

    @Nested
    class Given_a_lens_under_pressure {

        @Test
        void a_tear_may_run_and_a_ring_made_at_once_is_favoured() {
            OpeningCandidate swollen = OpeningCandidate.reference().with(Sign.SWOLLEN_LENS);
            assertThat(view(swollen, TORN_BY_HAND).reasons())
                    .anyMatch(reason -> reason.bearing() == Bearing.ASKS
                            && reason.words().startsWith("the lens is under pressure: a tear may run to the edge"));
            assertThat(view(swollen, PHOTODISRUPTION).reasons())
                    .anyMatch(reason ->
                            reason.bearing() == Bearing.ASKS && reason.words().contains("may leave it incomplete"));
            assertThat(view(swollen, THERMAL).reasons())
                    .anyMatch(reason -> reason.bearing() == Bearing.FAVOURS
                            && reason.words().contains("the whole edge is made at once"));
        }

        @Test
        void a_white_lens_of_unknown_pressure_may_be_under_pressure() {
            OpeningCandidate white =
                    OpeningCandidate.reference().with(Sign.BROWN_OR_WHITE_LENS).silentAbout(Sign.SWOLLEN_LENS);
            assertThat(view(white, TORN_BY_HAND).reasons())
                    .anyMatch(reason -> reason.words().startsWith("the lens may be under pressure"));
        }

        @Test
        void a_white_lens_that_is_not_swollen_is_not() {
            assertThat(view(OpeningCandidate.reference().with(Sign.BROWN_OR_WHITE_LENS), TORN_BY_HAND)
                            .reasons())
                    .noneMatch(reason -> reason.words().contains("under pressure"));
        }
    }

    @Nested
    class Given_a_weakly_held_lens {

        @ParameterizedTest
        @EnumSource(
                value = Sign.class,
                names = {
                    "PHACODONESIS",
                    "LENS_DISLOCATION",
                    "PSEUDOEXFOLIATION",
                    "VITRECTOMY",
                    "EYE_INJURY",
                    "MARFAN_SYNDROME"
                })
        void tearing_asks_for_care_and_the_others_are_favoured(Sign sign) {
            OpeningCandidate weak = OpeningCandidate.reference().with(sign);
            assertThat(verdict(weak, TORN_BY_HAND)).isEqualTo(Verdict.SUITS_WITH_CONDITIONS);
            assertThat(view(weak, THERMAL).reasons())
                    .extracting(Reason::bearing)
                    .containsExactly(Bearing.FAVOURS);
        }

        @Test
        void missing_zonule_counts_by_itself_and_with_signs() {
            OpeningCandidate missing = OpeningCandidate.reference().zonuleLoss(2);
            assertThat(first(missing, TORN_BY_HAND).words()).endsWith("(2.0 clock hours of zonule missing)");
            Reason both = first(missing.with(Sign.PHACODONESIS), TORN_BY_HAND);
            assertThat(both.words()).endsWith("(phacodonesis, 2.0 clock hours of zonule missing)");
            assertThat(both.evidence()).hasSize(2);
        }

        @Test
        void zonule_seen_to_be_whole_counts_for_nothing() {
            assertThat(verdict(OpeningCandidate.reference().zonuleLoss(0), TORN_BY_HAND))
                    .isEqualTo(Verdict.SUITS);
        }
    }

    /** Never hydrodissection in a posterior polar cataract: ESCRS EuroTimes, March 2017 (read). */
    @ParameterizedTest
    @EnumSource(OpeningTechnique.class)
    void a_posterior_polar_cataract_is_never_hydrodissected(OpeningTechnique technique) {
        assertThat(view(OpeningCandidate.reference().with(Sign.POSTERIOR_POLAR_CATARACT), technique)
                        .reasons())
                .anyMatch(reason -> reason.words().startsWith("no hydrodissection"));
    }

    @ParameterizedTest
    @CsvSource({
        "TORN_BY_HAND, an uneven cornea hides the edge",
        "THERMAL, an uneven cornea hides the edge",
        "DYE_LASER_COAGULATION, an uneven cornea bends the laser's light"
    })
    void an_uneven_cornea_is_coated(OpeningTechnique technique, String words) {
        assertThat(view(OpeningCandidate.reference().with(Sign.CORNEAL_GRAFT), technique)
                        .reasons())
                .anyMatch(reason -> reason.words().startsWith(words));
    }

    @Test
    void the_strongest_reason_stands_first_and_decides() {
        TechniqueView view = view(
                OpeningCandidate.reference()
                        .with(Sign.CANNOT_FIXATE, Sign.PHACODONESIS)
                        .withoutPupil(),
                PHOTODISRUPTION);
        assertThat(view.reasons())
                .extracting(Reason::bearing)
                .containsExactly(Bearing.FORBIDS, Bearing.LEAVES_OPEN, Bearing.FAVOURS);
        assertThat(view.verdict()).isEqualTo(Verdict.DOES_NOT_SUIT);
    }
}
