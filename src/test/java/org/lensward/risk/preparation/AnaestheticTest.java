package org.lensward.risk.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.lensward.finding.FindingCode.ANAESTHETIC_UNDECIDED;
import static org.lensward.finding.FindingCode.NO_ANAESTHETIC_LEFT;
import static org.lensward.risk.preparation.Patient.ordinary;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Allergen;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.finding.Severity;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;
import org.lensward.risk.preparation.AnaestheticChoice.Chosen;
import org.lensward.risk.preparation.AnaestheticChoice.NoneLeft;
import org.lensward.risk.preparation.AnaestheticChoice.Undecided;

/** Topical if the patient can, sub-Tenon in long or difficult eyes, no needle where it is dangerous: common practice, no source. */
class AnaestheticTest {

    private static Anaesthetic chosen(AnaestheticChoice choice) {
        assertThat(choice).isInstanceOf(Chosen.class);
        return ((Chosen) choice).kind();
    }

    /** The shipped policy with another order of preference. */
    private static PreparationPolicy preferring(Anaesthetic first) {
        PreparationPolicy shipped = Preparations.policy();
        AnaestheticPolicy before = shipped.anaesthetic();
        List<AnaestheticRule> order = new ArrayList<>(before.inOrder());
        order.sort((one, other) -> Boolean.compare(other.kind() == first, one.kind() == first));
        return new PreparationPolicy(
                shipped.agents(),
                new AnaestheticPolicy(order, before.longEye(), before.highestClotting(), before.clottingDays()),
                shipped.front(),
                shipped.support(),
                shipped.retina(),
                shipped.lensTypes(),
                shipped.similarPowers(),
                shipped.shared());
    }

    @Test
    void is_topical_where_nothing_speaks_against_it() {
        Preparation prepared = ordinary().prepared();
        assertThat(chosen(prepared.anaesthetic())).isEqualTo(Anaesthetic.TOPICAL);
        assertThat(prepared.anaesthetic().refused()).isEmpty();
        assertThat(ordinary().precaution(Topic.ANAESTHETIC).action())
                .isEqualTo("Topical anaesthetic: oxybuprocaine 0.4 % drops.");
    }

    @ParameterizedTest
    @CsvSource({
        "CANNOT_FIXATE, SUB_TENON",
        "SWOLLEN_LENS, SUB_TENON",
        "PHACODONESIS, SUB_TENON",
        "LENS_DISLOCATION, SUB_TENON",
        "CANNOT_COOPERATE, GENERAL",
        "CANNOT_LIE_FLAT, TOPICAL",
        "WARFARIN, TOPICAL"
    })
    void follows_the_patient(Sign sign, Anaesthetic kind) {
        assertThat(chosen(ordinary().with(sign).prepared().anaesthetic())).isEqualTo(kind);
    }

    @Test
    void is_sub_tenon_in_a_long_eye_and_says_what_it_measured() {
        AnaestheticChoice choice = ordinary().length(26.01).prepared().anaesthetic();
        assertThat(chosen(choice)).isEqualTo(Anaesthetic.SUB_TENON);
        assertThat(choice.refused())
                .extracting(Object::toString)
                .containsExactly("no topical: axial length 26.01 mm above 26 mm");
        assertThat(chosen(ordinary().length(26.00).prepared().anaesthetic())).isEqualTo(Anaesthetic.TOPICAL);
    }

    @Test
    void brings_the_set_with_its_solution() {
        assertThat(ordinary()
                        .with(Sign.CANNOT_FIXATE)
                        .precaution(Topic.ANAESTHETIC)
                        .bring())
                .extracting(Bring::item, Bring::particulars)
                .containsExactly(
                        tuple(TheatreItem.SUB_TENON_SET, "lidocaine with hyaluronidase 2 % with 15 IU/mL, 3 to 5 mL"));
    }

    @Test
    void leaves_hyaluronidase_out_where_it_is_not_tolerated() {
        assertThat(ordinary()
                        .with(Sign.CANNOT_FIXATE)
                        .allergicTo(Allergen.HYALURONIDASE)
                        .precaution(Topic.ANAESTHETIC)
                        .action())
                .contains("lidocaine without hyaluronidase");
    }

    @Test
    void is_another_kind_where_no_drop_is_tolerated() {
        Patient patient = ordinary().allergicTo(Allergen.ESTER_ANAESTHETIC).allergicTo(Allergen.AMIDE_ANAESTHETIC);
        assertThat(chosen(patient.prepared().anaesthetic())).isEqualTo(Anaesthetic.GENERAL);
        assertThat(patient.prepared().anaesthetic().refused().get(0).reasons())
                .containsExactly("no topical anaesthetic suits this patient");
        assertThat(patient.precaution(Topic.ANAESTHETIC).bring())
                .extracting(Bring::item)
                .containsExactly(TheatreItem.GENERAL_ANAESTHETIC);
    }

    @Nested
    class Given_a_policy_that_prefers_the_needle {

        private final PreparationPolicy needle = preferring(Anaesthetic.NEEDLE_BLOCK);

        @Test
        void it_is_taken_where_it_is_safe() {
            assertThat(chosen(ordinary().prepared(needle).anaesthetic())).isEqualTo(Anaesthetic.NEEDLE_BLOCK);
        }

        @ParameterizedTest
        @CsvSource({"STAPHYLOMA", "WARFARIN", "DIRECT_ANTICOAGULANT", "HIGH_MYOPIA"})
        void it_is_refused_where_it_is_dangerous(Sign sign) {
            assertThat(chosen(ordinary().with(sign).prepared(needle).anaesthetic()))
                    .isEqualTo(Anaesthetic.TOPICAL);
        }

        @Test
        void it_is_refused_in_a_long_eye() {
            assertThat(chosen(ordinary().length(27).prepared(needle).anaesthetic()))
                    .isEqualTo(Anaesthetic.SUB_TENON);
        }

        @Test
        void it_waits_for_the_length() {
            AnaestheticChoice choice = ordinary().unmeasured().prepared(needle).anaesthetic();
            assertThat(choice).isInstanceOf(Undecided.class);
            assertThat(((Undecided) choice).unknown()).containsExactly("axial length");
        }
    }

    @Nested
    class Given_an_unknown_fact {

        private final Patient patient = ordinary().silentAbout(Sign.CANNOT_FIXATE);

        @Test
        void it_is_undecided_and_names_the_fact() {
            Undecided undecided = (Undecided) patient.prepared().anaesthetic();
            assertThat(undecided.leaning()).isEqualTo(Anaesthetic.TOPICAL);
            assertThat(undecided.unknown()).containsExactly("whether the patient can fixate");
            assertThat(patient.precaution(Topic.ANAESTHETIC).action())
                    .isEqualTo("Undecided: unknown whether the patient can fixate. If none of it speaks against it:"
                            + " topical anaesthetic: oxybuprocaine 0.4 % drops.");
        }

        @Test
        void the_team_is_cautioned() {
            Finding finding = patient.prepared().findings().get(0);
            assertThat(finding.code()).isEqualTo(ANAESTHETIC_UNDECIDED);
            assertThat(finding.severity()).isEqualTo(Severity.CAUTION);
            assertThat(finding.message()).contains("topical", "unknown: whether the patient can fixate");
        }

        @Test
        void one_that_would_only_make_another_better_is_a_question() {
            Patient swollen = ordinary().silentAbout(Sign.SWOLLEN_LENS);
            assertThat(chosen(swollen.prepared().anaesthetic())).isEqualTo(Anaesthetic.TOPICAL);
            assertThat(swollen.precaution(Topic.ANAESTHETIC).unknown())
                    .containsExactly("swollen lens (slit lamp; lens thickness by ultrasound)");
            assertThat(ordinary().unmeasured().precaution(Topic.ANAESTHETIC).unknown())
                    .containsExactly("axial length");
        }

        @Test
        void undecided_always_says_what_is_unknown() {
            assertThatThrownBy(() -> new Undecided(Anaesthetic.TOPICAL, List.of(), List.of()))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void where_every_kind_is_refused_a_person_decides() {
        Patient patient = ordinary().with(Sign.CANNOT_COOPERATE, Sign.HEART_FAILURE);
        assertThat(patient.prepared().anaesthetic()).isInstanceOf(NoneLeft.class);
        Finding finding = patient.prepared().findings().get(0);
        assertThat(finding.code()).isEqualTo(NO_ANAESTHETIC_LEFT);
        assertThat(finding.severity()).isEqualTo(Severity.CONDITION);
        assertThat(finding.message())
                .contains("no topical: cannot cooperate", "no sub-Tenon", "no general: heart failure");
        assertThat(finding.evidence()).hasSize(2);
        assertThat(patient.precaution(Topic.ANAESTHETIC).bring()).isEmpty();
    }

    @Test
    void a_policy_without_any_kind_leaves_none_and_shows_the_person() {
        PreparationPolicy shipped = Preparations.policy();
        AnaestheticPolicy before = shipped.anaesthetic();
        Preparation prepared = ordinary()
                .prepared(new PreparationPolicy(
                        shipped.agents(),
                        new AnaestheticPolicy(
                                List.of(), before.longEye(), before.highestClotting(), before.clottingDays()),
                        shipped.front(),
                        shipped.support(),
                        shipped.retina(),
                        shipped.lensTypes(),
                        shipped.similarPowers(),
                        shipped.shared()));
        assertThat(prepared.findings()).extracting(Finding::code).containsExactly(NO_ANAESTHETIC_LEFT);
        assertThat(prepared.findings().get(0).evidence()).containsExactly(Patient.PERSON);
    }

    @Nested
    class Given_a_patient_who_cannot_lie_flat {

        private final Patient patient = ordinary().with(Sign.CANNOT_LIE_FLAT);

        @Test
        void the_position_is_tried_first() {
            assertThat(patient.precaution(Topic.POSITION).action()).startsWith("Try the position before the list");
        }

        @Test
        void a_failing_heart_is_treated_first() {
            Precaution position = patient.with(Sign.HEART_FAILURE).precaution(Topic.POSITION);
            assertThat(position.action()).endsWith("Have the heart failure treated first.");
            assertThat(position.reasons()).containsExactly("cannot lie flat", "heart failure");
        }

        @Test
        void the_anaesthetist_is_told() {
            assertThat(patient.with(Sign.CANNOT_COOPERATE)
                            .precaution(Topic.POSITION)
                            .action())
                    .startsWith("Tell the anaesthetist");
        }
    }
}
