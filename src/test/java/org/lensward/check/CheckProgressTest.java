package org.lensward.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.eye.Laterality;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** The order of a lens check and its stops: no step without the one before, and a mismatch is a hard stop. */
class CheckProgressTest {

    private static final Expected EXPECTED = Checks.expected();
    private static final CheckProgress CONFIRMED =
            ((Step.Advanced) CheckProgress.opened().confirm(EXPECTED, Checks.NOW)).next();

    private static Step present(CheckProgress from, Checkpoint at, UnaryOperator<Spoiled> spoil, Exemption exemption) {
        Presented presented =
                spoil.apply(new Spoiled(Checks.right(at, EXPECTED))).all();
        return from.present(new Attempt(at, presented, exemption), EXPECTED, Checks.NOW, Checks.policy());
    }

    private static Step present(CheckProgress from, Checkpoint at) {
        return present(from, at, UnaryOperator.identity(), Exemption.none());
    }

    private static CheckProgress upTo(Checkpoint last) {
        CheckProgress progress = CONFIRMED;
        for (Checkpoint at : Checkpoint.values()) {
            progress = ((Step.Advanced) present(progress, at)).next();
            if (at == last) {
                break;
            }
        }
        return progress;
    }

    private static List<FindingCode> refusal(Step step) {
        return ((Step.Refused) step).reasons().stream().map(Finding::code).toList();
    }

    @Test
    void step_by_step_it_comes_to_its_end() {
        CheckProgress progress = CONFIRMED;
        for (Checkpoint at : Checkpoint.values()) {
            assertThat(progress.state().next()).contains(at);
            progress = ((Step.Advanced) present(progress, at)).next();
        }
        assertThat(progress.state()).isEqualTo(CheckState.COMPLETED);
        assertThat(progress.verified()).extracting(Verified::at).containsExactly(Checkpoint.values());
    }

    @ParameterizedTest
    @EnumSource
    void codes_lead_back_to_what_they_stand_for(Checkpoint at) {
        assertThat(Checkpoint.of(at.code())).contains(at);
        assertThat(CheckState.of(at.reached().code())).contains(at.reached());
        assertThat(Checkpoint.of("lunch")).isEmpty();
        assertThat(CheckState.of("lunch")).isEmpty();
    }

    @Nested
    class Given_no_confirmation {

        @ParameterizedTest
        @EnumSource
        void nothing_is_picked_or_checked(Checkpoint at) {
            assertThat(refusal(present(CheckProgress.opened(), at))).containsExactly(FindingCode.CHECK_NOT_CONFIRMED);
        }

        @Test
        void a_plan_that_changed_meanwhile_cannot_be_confirmed() {
            Step step = CheckProgress.opened().confirm(EXPECTED, new Standing("f".repeat(64), ""));
            assertThat(((Step.Voided) step).reason().code()).isEqualTo(FindingCode.CHECK_PLAN_CHANGED);
        }

        @Test
        void a_patient_who_cannot_be_told_from_others_is_seen_at_once() {
            Expected nameless = new Expected(
                    EXPECTED.evidence(),
                    EXPECTED.booking(),
                    new Identity(Set.of(), Optional.empty()),
                    EXPECTED.eye(),
                    EXPECTED.fingerprint(),
                    EXPECTED.lens(),
                    EXPECTED.axis(),
                    EXPECTED.operation(),
                    EXPECTED.allergies(),
                    EXPECTED.backUps());
            assertThat(refusal(CheckProgress.opened().confirm(nameless, Checks.NOW)))
                    .containsExactly(FindingCode.CHECK_IDENTITY_INCOMPLETE);
        }

        @Test
        void confirmed_twice_is_confirmed_once() {
            assertThat(CONFIRMED.confirm(EXPECTED, Checks.NOW)).isEqualTo(new Step.Repeated());
        }

        @ParameterizedTest
        @EnumSource(names = {"PICKED", "COMPLETED", "VOID", "FAILED", "REFUSED"})
        void once_begun_or_ended_it_is_not_confirmed(CheckState state) {
            Step step = new CheckProgress(state, List.of()).confirm(EXPECTED, Checks.NOW);
            boolean stopped = state == CheckState.FAILED || state == CheckState.REFUSED;
            assertThat(refusal(step)).containsExactly(stopped ? FindingCode.CHECK_STOPPED : FindingCode.CHECK_CLOSED);
        }
    }

    @Nested
    class Given_a_step {

        @Test
        void out_of_order_it_is_refused_even_if_all_is_right() {
            assertThat(refusal(present(CONFIRMED, Checkpoint.SIGN_IN))).containsExactly(FindingCode.CHECK_OUT_OF_ORDER);
            assertThat(refusal(present(upTo(Checkpoint.TIME_OUT), Checkpoint.SIGN_OUT)))
                    .containsExactly(FindingCode.CHECK_OUT_OF_ORDER);
        }

        @Test
        void with_a_label_that_names_no_whole_device_it_is_refused_and_counts_for_nothing() {
            for (String device : List.of("", "0950600013435")) {
                Carton.Label cut = new Carton.Label(device, Optional.empty(), Optional.empty(), Optional.empty());
                Step step = present(CONFIRMED, Checkpoint.PICK, scan -> scan.label(cut), Exemption.none());
                assertThat(refusal(step)).containsExactly(FindingCode.CHECK_SCAN_UNREADABLE);
            }
        }

        /** A HIBC primary identifier begins with a letter: ANSI/HIBC 2.6, value from memory. */
        @Test
        void with_a_label_of_the_other_standard_it_is_compared() {
            Carton.Label hibc =
                    new Carton.Label("A123BJC5D6E71", Optional.empty(), Optional.of("S1"), Checks.LABEL.expiry());
            Step step = present(
                    CONFIRMED, Checkpoint.PICK, scan -> scan.label(hibc).bank(Optional.empty()), Exemption.none());
            assertThat(step).isInstanceOf(Step.Advanced.class);
        }

        @Test
        void done_again_it_changes_nothing() {
            assertThat(present(upTo(Checkpoint.TIME_OUT), Checkpoint.PICK)).isEqualTo(new Step.Repeated());
            assertThat(present(upTo(Checkpoint.SIGN_OUT), Checkpoint.SIGN_OUT)).isEqualTo(new Step.Repeated());
        }

        @Test
        void done_again_and_wrong_this_time_it_stops_the_check() {
            Step step = present(
                    upTo(Checkpoint.TIME_OUT),
                    Checkpoint.TIME_OUT,
                    scan -> scan.eyes(EyesRead.all(Laterality.LEFT)),
                    Exemption.none());
            assertThat(((Step.Stopped) step).next().state()).isEqualTo(CheckState.FAILED);
        }

        @Test
        void after_the_end_a_difference_is_said_and_changes_nothing() {
            Step step = present(
                    upTo(Checkpoint.SIGN_OUT),
                    Checkpoint.SIGN_OUT,
                    scan -> scan.lens(Checks.lens("22.0 D")),
                    Exemption.none());
            assertThat(refusal(step)).containsOnly(FindingCode.CHECK_POWER_DIFFERS);
        }

        @Test
        void another_carton_than_the_one_picked_stops_the_check_though_it_is_the_same_lens() {
            Carton.Label other = new Carton.Label(
                    Checks.LABEL.device(), Checks.LABEL.lot(), Optional.of("S-0043"), Checks.LABEL.expiry());
            Step step = present(
                    upTo(Checkpoint.SIGN_IN),
                    Checkpoint.TIME_OUT,
                    scan -> scan.label(other).bank(Optional.empty()),
                    Exemption.none());
            assertThat(((Step.Stopped) step).differences())
                    .extracting(Difference::what)
                    .containsExactly("carton picked");
        }
    }

    @Nested
    class Given_a_hard_stop {

        private final CheckProgress failed = ((Step.Stopped) present(
                        CONFIRMED, Checkpoint.PICK, scan -> scan.lens(Checks.lens("-21.5 D")), Exemption.none()))
                .next();

        @ParameterizedTest
        @EnumSource
        void no_step_goes_on_from_there(Checkpoint at) {
            assertThat(refusal(present(failed, at))).containsExactly(FindingCode.CHECK_STOPPED);
        }

        @Test
        void nobody_confirms_it_away() {
            assertThat(refusal(failed.confirm(EXPECTED, Checks.NOW))).containsExactly(FindingCode.CHECK_STOPPED);
        }

        @Test
        void a_check_that_is_void_or_over_takes_no_step() {
            assertThat(refusal(present(new CheckProgress(CheckState.VOID, List.of()), Checkpoint.PICK)))
                    .containsExactly(FindingCode.CHECK_CLOSED);
        }
    }

    @Nested
    class Given_a_change {

        @Test
        void of_the_plan_nothing_verified_counts() {
            Step step = upTo(Checkpoint.TIME_OUT)
                    .present(
                            new Attempt(Checkpoint.BEFORE_OPENING, Checks.right(Checkpoint.BEFORE_OPENING, EXPECTED)),
                            EXPECTED,
                            new Standing("a".repeat(64), Checks.NOW.place()),
                            Checks.policy());
            assertThat(((Step.Voided) step).reason().code()).isEqualTo(FindingCode.CHECK_PLAN_CHANGED);
        }

        @Test
        void of_the_list_nothing_verified_counts() {
            for (String place : List.of("1 at 09:30", "2 at 10:00", "")) {
                Step step = upTo(Checkpoint.PICK)
                        .present(
                                new Attempt(Checkpoint.SIGN_IN, Checks.right(Checkpoint.SIGN_IN, EXPECTED)),
                                EXPECTED,
                                new Standing(Checks.FINGERPRINT, place),
                                Checks.policy());
                Finding reason = ((Step.Voided) step).reason();
                assertThat(reason.code()).isEqualTo(FindingCode.CHECK_LIST_CHANGED);
                assertThat(reason.message()).contains("2 at 09:30", place.isEmpty() ? "not listed" : place);
            }
        }

        @Test
        void of_the_list_before_the_pick_harms_nothing() {
            Step step = CONFIRMED.present(
                    new Attempt(Checkpoint.PICK, Checks.right(Checkpoint.PICK, EXPECTED)),
                    EXPECTED,
                    new Standing(Checks.FINGERPRINT, "1 at 08:00"),
                    Checks.policy());
            assertThat(step).isInstanceOf(Step.Advanced.class);
        }

        @Test
        void after_the_end_undoes_nothing() {
            Step step = upTo(Checkpoint.SIGN_OUT)
                    .present(
                            new Attempt(Checkpoint.SIGN_OUT, Checks.right(Checkpoint.SIGN_OUT, EXPECTED)),
                            EXPECTED,
                            new Standing("a".repeat(64), ""),
                            Checks.policy());
            assertThat(step).isEqualTo(new Step.Repeated());
        }
    }

    @Nested
    class Given_an_override {

        private static final Exemption SIGNED =
                new Exemption.Signed("Practitioner/surgeon", "antibiotic changed", "Practitioner/nurse-1");
        private static final UnaryOperator<Spoiled> LATEX = scan -> scan.allergies(Optional.of(Set.of("latex")));

        @Test
        void a_judgement_passes_and_is_kept() {
            Step.Advanced step = (Step.Advanced) present(CONFIRMED, Checkpoint.PICK, LATEX, SIGNED);
            assertThat(step.next().state()).isEqualTo(CheckState.PICKED);
            assertThat(step.overridden())
                    .extracting(Difference::code)
                    .containsExactly(FindingCode.CHECK_ALLERGIES_DIFFER);
        }

        @Test
        void unsigned_the_same_is_a_hard_stop() {
            assertThat(present(CONFIRMED, Checkpoint.PICK, LATEX, Exemption.none()))
                    .isInstanceOf(Step.Stopped.class);
        }

        @Test
        void a_fact_beside_the_judgement_is_a_hard_stop_all_the_same() {
            Step step = present(
                    CONFIRMED, Checkpoint.PICK, scan -> LATEX.apply(scan).lens(Checks.lens("22.0 D")), SIGNED);
            assertThat(((Step.Stopped) step).differences()).hasSize(3);
        }

        @Test
        void it_names_clinician_reason_and_another_person() {
            Optional<String> surgeon = Optional.of("Practitioner/surgeon");
            Optional<String> nurse = Optional.of("Practitioner/nurse-1");
            Optional<String> reason = Optional.of("antibiotic changed");
            assertThat(Exemption.signed(surgeon, reason, nurse, EXPECTED.evidence())
                            .value())
                    .contains(SIGNED);
            assertThat(List.of(
                            Exemption.signed(Optional.empty(), reason, nurse, EXPECTED.evidence()),
                            Exemption.signed(surgeon, Optional.of(" "), nurse, EXPECTED.evidence()),
                            Exemption.signed(surgeon, reason, Optional.empty(), EXPECTED.evidence()),
                            Exemption.signed(surgeon, reason, surgeon, EXPECTED.evidence())))
                    .allSatisfy(each -> assertThat(each.findings())
                            .extracting(Finding::code)
                            .containsExactly(FindingCode.CHECK_OVERRIDE_REFUSED));
        }

        @Test
        void none_can_be_made_without_them() {
            List<String[]> bad = List.of(
                    new String[] {" ", "why", "b"},
                    new String[] {"a", " ", "b"},
                    new String[] {"a", "why", " "},
                    new String[] {"a", "why", "a "});
            assertThat(bad).allSatisfy(each -> assertThatThrownBy(() -> new Exemption.Signed(each[0], each[1], each[2]))
                    .isInstanceOf(IllegalArgumentException.class));
        }
    }
}
