package org.lensward.risk.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;
import static org.lensward.risk.opening.Weighing.first;
import static org.lensward.risk.opening.Weighing.verdict;
import static org.lensward.risk.opening.Weighing.view;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Allergen;
import org.lensward.eye.Sign;
import org.lensward.lens.OpticMaterial;

/** Whether a dye-absorbing laser suits, which stands and falls with its dye. Common practice, no source. */
class DyeLaserWeighingTest {

    @Test
    void an_eye_that_will_not_hold_still_is_kept_still() {
        assertThat(view(OpeningCandidate.reference().with(Sign.CANNOT_COOPERATE), DYE_LASER_COAGULATION)
                        .reasons())
                .anyMatch(reason -> reason.words().startsWith("the eye must be kept still"));
    }

    @Test
    void an_allergy_to_its_dye_forbids_it() {
        assertThat(verdict(OpeningCandidate.reference().allergicTo(Allergen.TRYPAN_BLUE), DYE_LASER_COAGULATION))
                .isEqualTo(Verdict.DOES_NOT_SUIT);
        assertThat(verdict(OpeningCandidate.reference().allergicTo(Allergen.LATEX), DYE_LASER_COAGULATION))
                .isEqualTo(Verdict.SUITS_WITH_CONDITIONS);
    }

    @Test
    void an_allergy_that_is_not_understood_leaves_it_open() {
        OpeningCandidate unclear = OpeningCandidate.reference().allergicToSomething("a blue colouring");
        assertThat(verdict(unclear, DYE_LASER_COAGULATION)).isEqualTo(Verdict.UNKNOWN);
        assertThat(first(unclear, DYE_LASER_COAGULATION).words()).contains("a blue colouring");
    }

    /** 0.4 % is 25 times 0.016 %. */
    @Test
    void without_a_protocol_for_its_concentration_it_does_not_suit() {
        OpeningPolicy noProtocol = Openings.having(Set.of(OpeningTechnique.values()), Openings.dyes());
        TechniqueView view = OpeningCandidate.reference().plan(noProtocol).view(DYE_LASER_COAGULATION);
        assertThat(view.verdict()).isEqualTo(Verdict.DOES_NOT_SUIT);
        assertThat(view.reasons().get(0).words())
                .isEqualTo("trypan blue 0.4 % is 25.0 times the usual 0.016 %, and no local protocol permits it");
    }

    @Test
    void with_one_the_protocol_is_named() {
        assertThat(first(OpeningCandidate.reference(), DYE_LASER_COAGULATION).words())
                .isEqualTo("trypan blue 0.4 % is 25.0 times the usual 0.016 %,"
                        + " permitted only by the local protocol 'strong dye for the laser'");
    }

    @Test
    void the_optic_is_asked_about() {
        assertThat(view(OpeningCandidate.reference().material(OpticMaterial.HYDROPHILIC_ACRYLIC), DYE_LASER_COAGULATION)
                        .reasons())
                .anyMatch(reason -> reason.words().contains("may stain the water-rich optic"));
        assertThat(view(OpeningCandidate.reference().designUnknown(), DYE_LASER_COAGULATION)
                        .reasons())
                .anyMatch(reason -> reason.words().contains("does not say what the optic is made of"));
    }
}
