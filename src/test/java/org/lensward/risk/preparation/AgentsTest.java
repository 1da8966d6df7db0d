package org.lensward.risk.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.lensward.eye.Allergen.CEPHALOSPORIN;
import static org.lensward.eye.Allergen.FLUOROQUINOLONE;
import static org.lensward.eye.Allergen.IODINE;
import static org.lensward.eye.Allergen.LATEX;
import static org.lensward.eye.Allergen.NON_STEROIDAL_ANTI_INFLAMMATORY;
import static org.lensward.eye.Allergen.PENICILLIN;
import static org.lensward.eye.Allergen.PHENYLEPHRINE;
import static org.lensward.eye.Allergen.SULPHONAMIDE;
import static org.lensward.finding.FindingCode.NO_AGENT_LEFT;
import static org.lensward.risk.preparation.Patient.ordinary;

import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.finding.Severity;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;

/** Which agent is given: the first of the policy's list that nothing forbids. */
class AgentsTest {

    @Nested
    class The_antibiotic {

        /** ESCRS Endophthalmitis Study Group, J Cataract Refract Surg 2007;33:978 (value from memory). */
        @Test
        void is_cefuroxime_first() {
            Precaution antibiotic = ordinary().precaution(Topic.ANTIBIOTIC);
            assertThat(antibiotic.action()).endsWith("cefuroxime 1 mg in 0.1 mL.");
            assertThat(antibiotic.source()).contains("2007;33:978");
            assertThat(antibiotic.unknown()).isEmpty();
            assertThat(antibiotic.bring()).extracting(Bring::item).containsExactly(TheatreItem.INTRACAMERAL_ANTIBIOTIC);
            assertThat(antibiotic.bring().get(0).contains()).containsExactly(CEPHALOSPORIN);
        }

        @Test
        void is_another_after_an_allergy_to_cephalosporins_and_says_why() {
            Precaution antibiotic = ordinary().allergicTo(CEPHALOSPORIN).precaution(Topic.ANTIBIOTIC);
            assertThat(antibiotic.action()).contains("moxifloxacin");
            assertThat(antibiotic.reasons()).contains("no cefuroxime: allergic to cephalosporin (cephalosporin)");
            assertThat(antibiotic.evidence()).extracting(Object::toString).contains("AllergyIntolerance/0.code");
        }

        @Test
        void is_another_after_a_severe_reaction_to_penicillin() {
            assertThat(ordinary()
                            .severelyAllergicTo(PENICILLIN)
                            .precaution(Topic.ANTIBIOTIC)
                            .action())
                    .contains("moxifloxacin");
        }

        /** A reaction not recorded as severe is not recorded as mild either. */
        @Test
        void after_another_reaction_to_penicillin_waits_for_how_severe_it_was() {
            Precaution antibiotic = ordinary().allergicTo(PENICILLIN).precaution(Topic.ANTIBIOTIC);
            assertThat(antibiotic.action()).contains("cefuroxime");
            assertThat(antibiotic.unknown()).containsExactly("how severe the reaction to penicillin was");
        }

        @Test
        void is_asked_for_where_none_is_left_and_never_guessed() {
            Patient patient = ordinary().allergicTo(CEPHALOSPORIN).allergicTo(FLUOROQUINOLONE);
            Precaution antibiotic = patient.precaution(Topic.ANTIBIOTIC);
            assertThat(antibiotic.action()).contains("ask which antibiotic to use");
            assertThat(antibiotic.bring()).isEmpty();
            Finding finding = patient.prepared().findings().get(0);
            assertThat(finding.code()).isEqualTo(NO_AGENT_LEFT);
            assertThat(finding.severity()).isEqualTo(Severity.CONDITION);
            assertThat(finding.message())
                    .contains("no antibiotic", "no cefuroxime: allergic to cephalosporin", "no moxifloxacin");
            assertThat(finding.evidence()).hasSize(2);
        }

        @Test
        void is_asked_for_where_the_policy_names_none() {
            PreparationPolicy shipped = Preparations.policy();
            PreparationPolicy bare = new PreparationPolicy(
                    Map.of(),
                    shipped.anaesthetic(),
                    shipped.front(),
                    shipped.support(),
                    shipped.retina(),
                    shipped.lensTypes(),
                    shipped.similarPowers(),
                    shipped.shared());
            assertThat(ordinary().prepared(bare).findings())
                    .filteredOn(each -> each.code() == NO_AGENT_LEFT)
                    .extracting(Finding::message)
                    .contains("The policy leaves no antibiotic for this patient: it names none.");
        }

        @Test
        void waits_for_what_an_allergy_that_is_not_understood_means() {
            Patient patient = ordinary().allergic(Set.of(), true, "eye drops, blue");
            assertThat(patient.precaution(Topic.ANTIBIOTIC).unknown())
                    .containsExactly("whether the allergy \"eye drops, blue\" forbids cefuroxime");
            assertThat(patient.precaution(Topic.ALLERGIES).unknown())
                    .containsExactly("what the allergy \"eye drops, blue\" forbids");
        }

        @Test
        void waits_for_a_sign_that_the_record_is_silent_about() {
            assertThat(ordinary()
                            .silentAbout(Sign.RESISTANT_BACTERIA)
                            .precaution(Topic.ANTIBIOTIC)
                            .unknown())
                    .containsExactly("whether resistant bacteria were ever found");
        }
    }

    @Test
    void iodine_that_is_not_tolerated_is_replaced() {
        assertThat(ordinary().precaution(Topic.ANTISEPTIC).action()).contains("povidone iodine");
        assertThat(ordinary().allergicTo(IODINE).precaution(Topic.ANTISEPTIC).action())
                .isEqualTo("Antiseptic: aqueous chlorhexidine 0.05 %.");
    }

    @Test
    void phenylephrine_that_is_not_tolerated_is_replaced() {
        Patient floppy = ordinary().with(Sign.TAMSULOSIN);
        assertThat(floppy.precaution(Topic.PUPIL).action()).contains("phenylephrine");
        assertThat(floppy.allergicTo(PHENYLEPHRINE).precaution(Topic.PUPIL).action())
                .contains("adrenaline")
                .doesNotContain("phenylephrine");
    }

    @Test
    void who_does_not_tolerate_anti_inflammatory_drugs_gets_the_steroid_alone() {
        assertThat(ordinary()
                        .with(Sign.UVEITIS)
                        .allergicTo(NON_STEROIDAL_ANTI_INFLAMMATORY)
                        .precaution(Topic.MACULA)
                        .action())
                .contains(": dexamethasone 0.1 %");
    }

    @Test
    void asthma_forbids_a_beta_blocker() {
        Patient glaucoma = ordinary().with(Sign.GLAUCOMA);
        assertThat(glaucoma.precaution(Topic.PRESSURE_AFTER).action()).contains("timolol");
        Precaution asthmatic = glaucoma.with(Sign.ASTHMA).precaution(Topic.PRESSURE_AFTER);
        assertThat(asthmatic.action()).contains("brimonidine");
        assertThat(asthmatic.reasons()).contains("no timolol: asthma");
    }

    @Test
    void kidney_and_heart_decide_how_the_pressure_is_lowered() {
        Patient high = ordinary().examined(Examined.ordinary().pressure(30));
        assertThat(high.precaution(Topic.PRESSURE_BEFORE).action()).contains("acetazolamide");
        assertThat(high.allergicTo(SULPHONAMIDE)
                        .precaution(Topic.PRESSURE_BEFORE)
                        .action())
                .contains("mannitol");
        assertThat(high.with(Sign.KIDNEY_DISEASE)
                        .precaution(Topic.PRESSURE_BEFORE)
                        .action())
                .contains("brimonidine");
        assertThat(high.allergicTo(SULPHONAMIDE)
                        .with(Sign.HEART_FAILURE)
                        .precaution(Topic.PRESSURE_BEFORE)
                        .action())
                .contains("brimonidine");
    }

    @Test
    void latex_changes_the_gloves() {
        assertThat(ordinary().on(Topic.LATEX)).isEmpty();
        assertThat(ordinary().allergicTo(LATEX).precaution(Topic.LATEX).bring())
                .extracting(Bring::item)
                .containsExactly(TheatreItem.LATEX_FREE_SET);
    }

    @Test
    void no_recorded_allergy_is_a_question_not_a_no() {
        assertThat(ordinary().precaution(Topic.ALLERGIES).action())
                .isEqualTo("Find out: any allergy, for none is recorded.");
        assertThat(ordinary().allergicTo(LATEX).precaution(Topic.ALLERGIES).reasons())
                .containsExactly("latex");
    }

    @Test
    void an_agent_has_a_name_and_a_source() {
        assertThatThrownBy(() -> new Agent(" ", "", Set.of(), Set.of(), Set.of(), "known"))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Agent("water", "", Set.of(), Set.of(), Set.of(), " "))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(new Agent("water", "", Set.of(), Set.of(), Set.of(), "known"))
                .hasToString("water");
    }
}
