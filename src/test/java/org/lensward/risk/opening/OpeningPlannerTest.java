package org.lensward.risk.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.OPENING_FACTS_UNKNOWN;
import static org.lensward.finding.FindingCode.OPENING_TECHNIQUE_MISSING;
import static org.lensward.risk.TheatreItem.CAPSULE_DYE;
import static org.lensward.risk.TheatreItem.COHESIVE_VISCOELASTIC;
import static org.lensward.risk.TheatreItem.DISPERSIVE_VISCOELASTIC;
import static org.lensward.risk.TheatreItem.DYE_ABSORBING_LASER;
import static org.lensward.risk.TheatreItem.FINE_STAB_BLADE;
import static org.lensward.risk.TheatreItem.PHOTODISRUPTION_LASER;
import static org.lensward.risk.TheatreItem.THERMAL_OPENING_DEVICE;
import static org.lensward.risk.opening.OpeningCandidate.codes;
import static org.lensward.risk.opening.OpeningCandidate.message;
import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;
import static org.lensward.risk.opening.OpeningTechnique.PHOTODISRUPTION;
import static org.lensward.risk.opening.OpeningTechnique.THERMAL;
import static org.lensward.risk.opening.OpeningTechnique.TORN_BY_HAND;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Allergen;
import org.lensward.eye.Sign;
import org.lensward.finding.Severity;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;

/** Which technique is chosen, in what steps, with what at hand. */
class OpeningPlannerTest {

    private static final OpeningPolicy ALL = Openings.having(PHOTODISRUPTION, DYE_LASER_COAGULATION, THERMAL);

    private static OpeningPolicy only(OpeningTechnique technique) {
        return Openings.having(Set.of(technique), Openings.dyes(Openings.PROTOCOL));
    }

    private static List<TheatreItem> items(OpeningPlan plan) {
        return plan.things().stream().map(Bring::item).toList();
    }

    @Test
    void an_ordinary_eye_is_opened_by_the_first_of_the_usual_order() {
        assertThat(OpeningCandidate.reference().plan(ALL).technique()).contains(TORN_BY_HAND);
    }

    @Test
    void a_lens_under_pressure_follows_the_order_for_it() {
        assertThat(OpeningCandidate.reference()
                        .with(Sign.SWOLLEN_LENS)
                        .plan(ALL)
                        .technique())
                .contains(THERMAL);
        assertThat(OpeningCandidate.reference()
                        .with(Sign.SWOLLEN_LENS)
                        .plan(Openings.having(DYE_LASER_COAGULATION))
                        .technique())
                .contains(DYE_LASER_COAGULATION);
    }

    @Test
    void a_weakly_held_lens_follows_the_order_for_it() {
        assertThat(OpeningCandidate.reference()
                        .with(Sign.PHACODONESIS)
                        .plan(ALL)
                        .technique())
                .contains(PHOTODISRUPTION);
        assertThat(OpeningCandidate.reference()
                        .with(Sign.PHACODONESIS, Sign.CANNOT_FIXATE)
                        .plan(ALL)
                        .technique())
                .contains(DYE_LASER_COAGULATION);
    }

    @Test
    void what_suits_goes_before_what_is_open() {
        assertThat(OpeningCandidate.reference()
                        .with(Sign.PHACODONESIS)
                        .silentAbout(Sign.CANNOT_FIXATE)
                        .plan(Openings.having(PHOTODISRUPTION))
                        .technique())
                .contains(TORN_BY_HAND);
    }

    @Test
    void where_only_an_open_one_is_left_what_is_unknown_is_a_condition() {
        OpeningPlan plan = OpeningCandidate.reference()
                .silentAbout(Sign.CANNOT_FIXATE)
                .withoutPupil()
                .plan(only(PHOTODISRUPTION));
        assertThat(plan.technique()).contains(PHOTODISRUPTION);
        assertThat(plan.findings().get(0).severity()).isEqualTo(Severity.CONDITION);
        assertThat(message(plan.findings(), OPENING_FACTS_UNKNOWN))
                .startsWith("Whether an opening by photodisruption suits this eye is not known: ")
                .contains("the dilated pupil", "cannot fixate");
    }

    @Test
    void where_all_are_forbidden_the_surgeon_decides() {
        OpeningPlan plan =
                OpeningCandidate.reference().with(Sign.CANNOT_LIE_FLAT).plan(only(PHOTODISRUPTION));
        assertThat(plan.technique()).isEmpty();
        assertThat(plan.size()).isEmpty();
        assertThat(plan.steps()).isEmpty();
        assertThat(plan.things()).isEmpty();
        assertThat(codes(plan.findings())).containsExactly(OPENING_TECHNIQUE_MISSING);
    }

    @Test
    void of_an_eye_that_nobody_examined_the_red_reflex_is_looked_for_with_dye_at_hand() {
        OpeningPlan plan = OpeningCandidate.reference().unexamined().plan(ALL);
        assertThat(plan.technique()).contains(TORN_BY_HAND);
        assertThat(plan.dye()).isEmpty();
        assertThat(items(plan)).containsExactly(CAPSULE_DYE);
        assertThat(plan.findings()).isEmpty();
    }

    /** The order of the trade: coat, dye that fills the chamber without air, about 60 s, viscoelastic, fire. Common practice, no source. */
    @Test
    void a_dye_absorbing_laser_goes_step_by_step() {
        OpeningPlan plan = OpeningCandidate.reference().plan(only(DYE_LASER_COAGULATION));
        assertThat(plan.steps())
                .containsExactly(
                        "Coat the surface of the cornea.",
                        "Put dispersive viscoelastic over the endothelium.",
                        "Fill the chamber with trypan blue 0.4 %, no air bubble in it: under air the stain is uneven.",
                        "Wait 60.0 s.",
                        "Wash the dye out until the fluid runs clear.",
                        "Fill the chamber with viscoelastic.",
                        "Make sure that the stain is even all round where the laser will pass; if not, open by hand.",
                        "Fire for an opening of 5.80 mm, centred on the lens's axis.",
                        "Make sure that the disc is free all round before it is lifted.",
                        "Look at the whole edge; measure the opening's diameter and decentration and record them"
                                + " before the lens goes in.");
        assertThat(items(plan))
                .containsExactly(DYE_ABSORBING_LASER, DISPERSIVE_VISCOELASTIC, COHESIVE_VISCOELASTIC, CAPSULE_DYE);
        Bring dye = plan.things().get(3);
        assertThat(dye.particulars()).isEqualTo("trypan blue 0.4 %");
        assertThat(dye.contains()).containsExactly(Allergen.TRYPAN_BLUE);
    }

    @Nested
    class Given_a_swollen_white_lens {

        private final OpeningPlan plan = OpeningCandidate.reference()
                .with(Sign.SWOLLEN_LENS, Sign.BROWN_OR_WHITE_LENS)
                .plan();

        @Test
        void it_is_stained_decompressed_and_opened_small_first() {
            assertThat(plan.steps())
                    .containsSubsequence(
                            "Stain the capsule with trypan blue 0.016 %.",
                            "Wait 10.0 s.",
                            "Fill the chamber with dense cohesive viscoelastic until the front of the lens is flat.",
                            "Through a fine stab that does not leak, let the fluid out from in front of the nucleus"
                                    + " and from behind it.",
                            "Tear a small opening first, then enlarge it to an opening of 5.25 mm,"
                                    + " centred on the lens's axis.");
            assertThat(items(plan)).containsExactly(COHESIVE_VISCOELASTIC, FINE_STAB_BLADE, CAPSULE_DYE);
        }

        @Test
        void a_white_lens_of_which_nobody_says_whether_it_is_swollen_is_treated_as_if_it_were() {
            OpeningPlan white = OpeningCandidate.reference()
                    .with(Sign.BROWN_OR_WHITE_LENS)
                    .silentAbout(Sign.SWOLLEN_LENS)
                    .plan();
            assertThat(items(white)).contains(FINE_STAB_BLADE);
        }
    }

    @Test
    void photodisruption_docks_before_any_incision_and_stains_after_the_cut() {
        OpeningPlan plan =
                OpeningCandidate.reference().with(Sign.FUNDUS_NOT_SEEN).plan(only(PHOTODISRUPTION));
        assertThat(plan.steps())
                .containsSubsequence(
                        "Dock the laser to the eye before any incision.",
                        "Cut an opening of 5.25 mm, centred on the lens's axis.",
                        "Stain the capsule with trypan blue 0.016 %.");
        assertThat(items(plan)).containsExactly(PHOTODISRUPTION_LASER, CAPSULE_DYE);
    }

    @Test
    void a_thermal_ring_is_set_down_under_viscoelastic() {
        OpeningPlan plan = OpeningCandidate.reference().with(Sign.SWOLLEN_LENS).plan(only(THERMAL));
        assertThat(plan.steps())
                .containsSubsequence(
                        "Fill the chamber with viscoelastic.",
                        "Set the ring down for an opening of 5.25 mm, centred on the lens's axis; fire.");
        assertThat(items(plan)).containsExactly(THERMAL_OPENING_DEVICE, COHESIVE_VISCOELASTIC, CAPSULE_DYE);
    }

    @Test
    void a_laser_at_a_lens_under_pressure_brings_each_viscoelastic_once() {
        assertThat(items(OpeningCandidate.reference().with(Sign.SWOLLEN_LENS).plan(only(DYE_LASER_COAGULATION))))
                .doesNotHaveDuplicates();
    }

    @Test
    void a_posterior_polar_cataract_ends_without_hydrodissection() {
        assertThat(OpeningCandidate.reference()
                        .with(Sign.POSTERIOR_POLAR_CATARACT)
                        .plan()
                        .steps())
                .last()
                .isEqualTo("No hydrodissection: free the nucleus by hydrodelineation only.");
    }
}
