package org.lensward.risk.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.DYE_ALLERGY_UNCLEAR;
import static org.lensward.finding.FindingCode.DYE_CONCENTRATION_UNUSUAL;
import static org.lensward.finding.FindingCode.DYE_FORBIDDEN;
import static org.lensward.finding.FindingCode.DYE_MAY_STAIN_LENS;
import static org.lensward.finding.FindingCode.DYE_PROTOCOL_MISSING;
import static org.lensward.finding.FindingCode.OPENING_FACTS_UNKNOWN;
import static org.lensward.risk.opening.OpeningCandidate.codes;
import static org.lensward.risk.opening.OpeningCandidate.message;
import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;
import static org.lensward.risk.opening.OpeningTechnique.TORN_BY_HAND;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.eye.Allergen;
import org.lensward.eye.Sign;
import org.lensward.finding.Severity;
import org.lensward.lens.OpticMaterial;
import org.lensward.quantity.Percent;

/** The dye: which, how strong, and who may not have it. */
class DyeTest {

    private static final OpeningPolicy LASER =
            Openings.having(Set.of(DYE_LASER_COAGULATION), Openings.dyes(Openings.PROTOCOL));

    private static OpeningCandidate dark() {
        return OpeningCandidate.reference().with(Sign.FUNDUS_NOT_SEEN);
    }

    /** By division; 0.4 % against 0.016 % is the check value of the trade. */
    @ParameterizedTest
    @CsvSource({"0.4, 0.016, 25", "0.06, 0.016, 3.75", "0.1, 0.016, 6.25", "0.016, 0.016, 1", "0.4, 0.06, 6.6667"})
    void times_the_usual_concentration(double concentration, double usual, double times) {
        DyeRange range = new DyeRange(Openings.percent(0.0125), Openings.percent(usual), Openings.percent(0.1));
        assertThat(range.timesUsual(Percent.of(concentration)).value()).isCloseTo(times, within(5e-5));
    }

    @ParameterizedTest
    @CsvSource({"0.0124, false", "0.0125, true", "0.1, true", "0.11, false"})
    void the_ends_of_the_range_belong_to_it(double concentration, boolean inside) {
        DyeRange range = new DyeRange(Openings.percent(0.0125), Openings.percent(0.016), Openings.percent(0.1));
        assertThat(range.includes(Percent.of(concentration))).isEqualTo(inside);
    }

    @Test
    void an_eye_without_red_reflex_has_the_first_preparation() {
        DyePlan dye = dark().plan().dye().orElseThrow();
        assertThat(dye.preparation()).hasToString("trypan blue 0.016 %");
        assertThat(dye.timesUsual().value()).isEqualTo(1);
        assertThat(dye.protocol()).isEmpty();
        assertThat(dark().plan().findings()).isEmpty();
    }

    @Test
    void an_eye_with_its_red_reflex_has_none() {
        assertThat(OpeningCandidate.reference().plan().dye()).isEmpty();
    }

    @Nested
    class Given_the_strong_dye_of_a_laser {

        @Test
        void under_its_protocol_it_is_planned_under_a_condition_that_names_the_protocol() {
            OpeningPlan plan = OpeningCandidate.reference().plan(LASER);
            assertThat(plan.dye().orElseThrow().protocol()).contains("strong dye for the laser");
            assertThat(plan.dye().orElseThrow().timesUsual().value()).isCloseTo(25, within(1e-9));
            assertThat(message(plan.findings(), DYE_CONCENTRATION_UNUSUAL))
                    .isEqualTo("trypan blue 0.4 % lies outside 0.0125 % to 0.1 %: it is 25.0 times the usual 0.016 %."
                            + " It is permitted only by the local protocol 'strong dye for the laser'.");
            assertThat(DYE_CONCENTRATION_UNUSUAL.severity()).isEqualTo(Severity.CONDITION);
        }

        @Test
        void without_one_the_laser_is_not_planned_and_the_policy_is_told() {
            OpeningPlan plan = OpeningCandidate.reference()
                    .plan(Openings.having(Set.of(DYE_LASER_COAGULATION, TORN_BY_HAND), Openings.dyes()));
            assertThat(plan.technique()).contains(TORN_BY_HAND);
            assertThat(codes(plan.findings())).containsExactly(DYE_PROTOCOL_MISSING);
            assertThat(message(plan.findings(), DYE_PROTOCOL_MISSING)).contains("25.0 times the usual 0.016 %");
        }

        @Test
        void a_hospital_without_the_laser_is_not_told() {
            assertThat(OpeningCandidate.reference().plan().findings()).isEmpty();
        }

        @Test
        void a_laser_content_with_a_usual_concentration_needs_no_protocol() {
            DyePolicy weak = new DyePolicy(
                    Openings.dyes().ranges(),
                    List.of(),
                    Openings.preparation(DyeAgent.TRYPAN_BLUE, 0.1, ""),
                    List.of());
            OpeningPlan plan = OpeningCandidate.reference().plan(Openings.having(Set.of(DYE_LASER_COAGULATION), weak));
            assertThat(plan.technique()).contains(DYE_LASER_COAGULATION);
            assertThat(plan.dye().orElseThrow().protocol()).isEmpty();
            assertThat(codes(plan.findings())).doesNotContain(DYE_CONCENTRATION_UNUSUAL, DYE_PROTOCOL_MISSING);
        }

        @ParameterizedTest
        @CsvSource({
            "TRYPAN_BLUE, 0.4, true",
            "TRYPAN_BLUE, 0.1, true",
            "TRYPAN_BLUE, 0.41, false",
            "TRYPAN_BLUE, 0.09, false",
            "INDOCYANINE_GREEN, 0.3, false"
        })
        void a_protocol_covers_its_agent_and_its_concentrations_alone(
                DyeAgent agent, double concentration, boolean covered) {
            assertThat(Openings.PROTOCOL.covers(Openings.preparation(agent, concentration, "")))
                    .isEqualTo(covered);
        }
    }

    @Nested
    class Given_an_allergy {

        @Test
        void the_next_preparation_is_taken() {
            OpeningPlan plan = dark().allergicTo(Allergen.TRYPAN_BLUE).plan();
            assertThat(plan.dye().orElseThrow().preparation()).hasToString("indocyanine green 0.25 %");
            // no coat is asked for with it
            assertThat(plan.steps().get(0)).isEqualTo("Stain the capsule with indocyanine green 0.25 %.");
        }

        /** Indocyanine green is made up with sodium iodide (value from memory). */
        @ParameterizedTest
        @EnumSource(
                value = Allergen.class,
                names = {"INDOCYANINE_GREEN", "IODINE"})
        void where_none_is_left_the_team_is_told(Allergen second) {
            OpeningPlan plan = dark().allergicTo(Allergen.TRYPAN_BLUE, second).plan();
            assertThat(plan.technique()).contains(TORN_BY_HAND);
            assertThat(plan.dye()).isEmpty();
            assertThat(codes(plan.findings())).containsExactly(DYE_FORBIDDEN);
            assertThat(plan.findings().get(0).message())
                    .startsWith("The capsule should be stained (fundus not seen), but no dye may be used: trypan blue"
                            + " is forbidden by the allergy to trypan blue; indocyanine green");
            assertThat(plan.findings().get(0).evidence()).hasSize(2);
        }

        @Test
        void one_that_is_not_understood_is_a_condition_on_the_dye() {
            OpeningPlan plan = dark().allergicToSomething("a blue colouring").plan();
            assertThat(plan.dye()).isPresent();
            assertThat(message(plan.findings(), DYE_ALLERGY_UNCLEAR))
                    .isEqualTo("trypan blue 0.016 % is planned, but the record does not say whether the allergy to"
                            + " a blue colouring is to trypan blue.");
        }

        @Test
        void for_the_laser_it_is_said_once() {
            OpeningPlan plan = OpeningCandidate.reference()
                    .allergicToSomething("a blue colouring")
                    .plan(LASER);
            assertThat(codes(plan.findings())).contains(OPENING_FACTS_UNKNOWN).doesNotContain(DYE_ALLERGY_UNCLEAR);
        }
    }

    @Test
    void a_policy_without_any_dye_says_so() {
        DyePolicy none = new DyePolicy(
                Openings.dyes().ranges(), List.of(), Openings.dyes().forLaser(), List.of());
        OpeningPlan plan = dark().plan(Openings.having(Set.of(TORN_BY_HAND), none));
        assertThat(message(plan.findings(), DYE_FORBIDDEN)).endsWith("the policy names none.");
        assertThat(plan.findings().get(0).evidence()).hasToString("[Patient/p1]");
    }

    @Test
    void a_preparation_for_sight_outside_the_range_needs_a_protocol_too() {
        DyePolicy strong = new DyePolicy(
                Openings.dyes().ranges(),
                List.of(Openings.preparation(DyeAgent.TRYPAN_BLUE, 0.3, "")),
                Openings.dyes().forLaser(),
                List.of());
        OpeningPlan plan = dark().plan(Openings.having(Set.of(TORN_BY_HAND), strong));
        assertThat(plan.dye()).isEmpty();
        assertThat(message(plan.findings(), DYE_FORBIDDEN))
                .endsWith("trypan blue 0.3 % is 18.8 times the usual 0.016 %, and no local protocol permits it.");
    }

    /** Of five materials only hydrophilic acrylic took up dye: Ozbek et al., Ophthalmologica 2004;218:243-247 (abstract read). */
    @ParameterizedTest
    @EnumSource(OpticMaterial.class)
    void only_a_water_rich_optic_may_be_stained(OpticMaterial material) {
        boolean said = codes(dark().material(material).plan().findings()).contains(DYE_MAY_STAIN_LENS);
        assertThat(said).isEqualTo(material == OpticMaterial.HYDROPHILIC_ACRYLIC);
    }

    @Test
    void without_dye_no_optic_is_stained() {
        assertThat(OpeningCandidate.reference()
                        .material(OpticMaterial.HYDROPHILIC_ACRYLIC)
                        .plan()
                        .findings())
                .isEmpty();
    }
}
