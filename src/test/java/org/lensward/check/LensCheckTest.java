package org.lensward.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.lensward.finding.FindingCode.*;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.eye.Laterality;
import org.lensward.eye.Limit;
import org.lensward.finding.FindingCode;
import org.lensward.lens.KitRole;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/** One difference at a time. What is compared follows the causes in Kelly and Jalil, Eye 2011, and Steeples et al., Eye 2016. */
class LensCheckTest {

    private static List<Difference> differences(Checkpoint at, Expected expected, UnaryOperator<Spoiled> spoil) {
        Presented presented =
                spoil.apply(new Spoiled(Checks.right(at, expected))).all();
        return LensCheck.compare(at, expected, presented, Checks.policy()).all();
    }

    private static List<FindingCode> codes(Checkpoint at, UnaryOperator<Spoiled> spoil) {
        return differences(at, Checks.expected(), spoil).stream()
                .map(Difference::code)
                .toList();
    }

    private static List<FindingCode> codes(UnaryOperator<Spoiled> spoil) {
        return codes(Checkpoint.TIME_OUT, spoil);
    }

    @ParameterizedTest
    @EnumSource
    void all_as_expected_passes(Checkpoint at) {
        assertThat(LensCheck.compare(at, Checks.expected(), Checks.right(at, Checks.expected()), Checks.policy()))
                .isEqualTo(new CheckResult.Passed());
    }

    @Test
    void every_difference_is_named_not_only_the_first() {
        assertThat(codes(scan -> scan.eyes(EyesRead.all(Laterality.LEFT))
                        .lens(Checks.lens("-21.5 D"))
                        .found(Optional.empty())
                        .allergies(Optional.empty())))
                .containsExactly(
                        CHECK_EYE_DIFFERS,
                        CHECK_EYE_DIFFERS,
                        CHECK_EYE_DIFFERS,
                        CHECK_EYE_DIFFERS,
                        CHECK_POWER_DIFFERS,
                        CHECK_POWER_DIFFERS,
                        CHECK_PACKAGE_NOT_INTACT,
                        CHECK_ALLERGIES_DIFFER);
    }

    @Nested
    class Given_a_patient {

        private Identity with(String first, String second, String third) {
            return new Identity(
                    Set.of(
                            new Identity.Number("urn:oid:2.25.1", first),
                            new Identity.Number("urn:oid:2.25.2", second),
                            new Identity.Number("urn:oid:2.25.3", third)),
                    Checks.ada().birthDate());
        }

        @Test
        void white_space_round_an_identifier_is_no_difference_and_one_that_the_plan_does_not_know_proves_nothing() {
            assertThat(codes(scan -> scan.patient(with(" 704-1182 ", "998 112", "77"))))
                    .isEmpty();
        }

        @Test
        void two_that_agree_do_not_outweigh_a_third_that_contradicts() {
            Expected three = with(Checks.expected(), with("704-1182", "998 112", "77"));
            assertThat(differences(Checkpoint.TIME_OUT, three, scan -> scan.patient(with("704-1182", "998 112", "78"))))
                    .extracting(Difference::code)
                    .containsExactly(CHECK_PATIENT_DIFFERS);
        }

        @Test
        void nothing_stated_differs_by_identifiers_and_by_birth_date() {
            assertThat(differences(
                            Checkpoint.SIGN_IN,
                            Checks.expected(),
                            scan -> scan.patient(new Identity(Set.of(), Optional.empty()))))
                    .extracting(Difference::code, Difference::presented)
                    .containsExactly(
                            tuple(CHECK_PATIENT_DIFFERS, "not stated"), tuple(CHECK_BIRTH_DATE_DIFFERS, "not stated"));
        }

        @Test
        void of_whom_the_record_knows_one_identifier_or_no_birth_date_no_check_can_pass() {
            Identity one = new Identity(
                    Set.of(new Identity.Number("urn:oid:2.25.1", "704-1182")),
                    Checks.ada().birthDate());
            Identity unborn = new Identity(Checks.ada().numbers(), Optional.empty());
            for (Identity known : List.of(one, unborn)) {
                assertThat(differences(Checkpoint.PICK, with(Checks.expected(), known), scan -> scan.patient(known)))
                        .extracting(Difference::code)
                        .containsExactly(CHECK_IDENTITY_INCOMPLETE);
            }
        }

        @Test
        void nothing_that_identifies_is_printed() {
            assertThat(Checks.ada().toString()).doesNotContain("704", "1960");
            assertThat(Checks.expected().toString()).isEqualTo("Task/plan-b1-check-6f1ed002ab55");
            assertThat(Checks.right(Checkpoint.PICK, Checks.expected()).toString())
                    .doesNotContain("704", "1960");
            assertThat(new Difference(CHECK_PATIENT_DIFFERS, "identifiers", "704-1182", "704-1183").toString())
                    .isEqualTo("check-patient-differs");
            assertThat(new Identity.Number("s", "704").toString()).doesNotContain("704");
        }

        @Test
        void an_identifier_without_its_system_is_none() {
            assertThatThrownBy(() -> new Identity.Number(" ", "704")).hasMessageContaining("system");
            assertThatThrownBy(() -> new Identity.Number("s", "")).hasMessageContaining("value");
        }

        private static Expected with(Expected old, Identity patient) {
            return new Expected(
                    old.evidence(),
                    old.booking(),
                    patient,
                    old.eye(),
                    old.fingerprint(),
                    old.lens(),
                    old.axis(),
                    old.operation(),
                    old.allergies(),
                    old.backUps());
        }
    }

    @Nested
    class Given_an_eye {

        @Test
        void a_mark_on_the_other_side_differs_wherever_the_patient_is_seen() {
            Optional<Laterality> right = Optional.of(Laterality.RIGHT);
            EyesRead marked = new EyesRead(right, right, right, Optional.of(Laterality.LEFT));
            assertThat(differences(Checkpoint.SIGN_IN, Checks.expected(), scan -> scan.eyes(marked)))
                    .extracting(Difference::what)
                    .containsExactly("eye by the mark");
            assertThat(codes(Checkpoint.PICK, scan -> scan.eyes(marked))).isEmpty();
        }

        @Test
        void an_eye_not_stated_is_not_the_eye() {
            EyesRead silent = new EyesRead(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
            assertThat(codes(scan -> scan.eyes(silent))).hasSize(4).containsOnly(CHECK_EYE_DIFFERS);
        }
    }

    @Nested
    class Given_a_sheet {

        @Test
        void the_whole_fingerprint_is_as_good_as_the_printed_part() {
            assertThat(codes(scan -> scan.plan(Optional.of(" " + Checks.FINGERPRINT))))
                    .isEmpty();
        }

        @Test
        void less_than_is_printed_another_or_none_is_not_the_plan() {
            for (Optional<String> sheet :
                    List.of(Optional.of("6f1ed002ab5"), Optional.of("6f1ed002ab56"), Optional.<String>empty())) {
                assertThat(codes(scan -> scan.plan(sheet))).containsExactly(CHECK_PLAN_DIFFERS);
            }
        }

        @Test
        void on_another_day_nothing_but_a_pick_is_done() {
            UnaryOperator<Spoiled> before = scan -> scan.at(scan.all().at().minusDays(1));
            assertThat(codes(before)).containsExactly(CHECK_DAY_DIFFERS);
            assertThat(codes(Checkpoint.PICK, before)).isEmpty();
        }
    }

    @Nested
    class Given_a_lens {

        @Test
        void known_to_nobody_neither_model_nor_power_is_stated() {
            assertThat(codes(scan -> scan.bank(Optional.empty()).box(Optional.empty())))
                    .containsExactly(CHECK_MODEL_DIFFERS, CHECK_POWER_DIFFERS, CHECK_SECOND_PERSON_MISSING);
        }

        @Test
        void unknown_to_the_bank_it_is_read_by_somebody_who_did_not_scan_it() {
            assertThat(codes(scan -> scan.bank(Optional.empty()))).isEmpty();
            for (String reader : List.of("Practitioner/nurse-1", " ")) {
                assertThat(codes(scan -> scan.bank(Optional.empty())
                                .box(Optional.of(new Carton.BoxRead(Checks.lens("21.5 D"), reader)))))
                        .containsExactly(CHECK_SECOND_PERSON_MISSING);
            }
        }

        @Test
        void known_to_the_bank_the_box_is_read_where_the_policy_says_so() {
            UnaryOperator<Spoiled> unread = scan -> scan.box(Optional.empty());
            assertThat(codes(Checkpoint.TIME_OUT, unread)).isEmpty();
            assertThat(codes(Checkpoint.BEFORE_OPENING, unread)).containsExactly(CHECK_SECOND_PERSON_MISSING);
        }

        @Test
        void a_cylinder_more_less_or_other_is_another_lens() {
            CheckedLens toric =
                    new CheckedLens("DeviceDefinition/lens-1", Dioptres.of(21.5), Optional.of(Dioptres.of(2.25)));
            CheckedLens steeper = new CheckedLens(toric.model(), toric.power(), Optional.of(Dioptres.of(3)));
            Expected expected = Checks.expected(Laterality.LEFT, toric);
            assertThat(codes(scan -> scan.lens(toric))).containsExactly(CHECK_CYLINDER_DIFFERS, CHECK_CYLINDER_DIFFERS);
            for (CheckedLens other : List.of(steeper, Checks.lens("21.5 D"))) {
                assertThat(differences(Checkpoint.TIME_OUT, expected, scan -> scan.lens(other)))
                        .extracting(Difference::code)
                        .containsExactly(CHECK_CYLINDER_DIFFERS, CHECK_CYLINDER_DIFFERS);
            }
        }

        @Test
        void an_axis_is_read_exactly_where_one_is_planned() {
            Expected toric = Checks.expected(
                    Laterality.LEFT,
                    new CheckedLens("DeviceDefinition/lens-1", Dioptres.of(21.5), Optional.of(Dioptres.of(2.25))));
            assertThat(differences(Checkpoint.TIME_OUT, toric, scan -> scan.axis(Optional.empty())))
                    .extracting(Difference::presented)
                    .containsExactly("not stated");
            assertThat(differences(
                            Checkpoint.TIME_OUT, Checks.expected(), scan -> scan.axis(Optional.of(Degrees.of(5)))))
                    .extracting(Difference::expected)
                    .containsExactly("none");
        }
    }

    @Nested
    class Given_a_carton {

        @Test
        void the_last_day_of_use_counts_and_the_day_after_does_not() {
            assertThat(codes(scan -> scan.expiring(Checks.OPERATION))).isEmpty();
            assertThat(codes(scan -> scan.expiring(Checks.OPERATION.minusDays(1))))
                    .containsExactly(CHECK_LENS_EXPIRED);
        }

        @Test
        void it_must_be_in_date_on_the_day_it_is_used_whatever_was_planned() {
            assertThat(codes(scan ->
                            scan.expiring(Checks.OPERATION).at(scan.all().at().plusDays(1))))
                    .containsExactly(CHECK_DAY_DIFFERS, CHECK_LENS_EXPIRED);
        }

        @Test
        void an_expiry_that_no_label_states_is_not_in_date() {
            Carton.Label bare = new Carton.Label(
                    Checks.LABEL.device(), Checks.LABEL.lot(), Checks.LABEL.serial(), Optional.empty());
            assertThat(codes(scan -> scan.label(bare))).containsExactly(CHECK_CARTON_DIFFERS, CHECK_LENS_EXPIRED);
        }

        @Test
        void held_for_another_implanted_wasted_or_in_quarantine_it_is_not_free() {
            Optional<String> ours = Optional.of("ServiceRequest/b1");
            assertThat(codes(scan -> scan.held(UnitState.AVAILABLE, Optional.empty())))
                    .isEmpty();
            assertThat(codes(scan -> scan.held(UnitState.PICKED, ours))).isEmpty();
            assertThat(codes(Checkpoint.SIGN_OUT, scan -> scan.held(UnitState.IMPLANTED, ours)))
                    .isEmpty();
            List<UnaryOperator<Spoiled>> taken = List.of(
                    scan -> scan.held(UnitState.PICKED, Optional.of("ServiceRequest/b2")),
                    scan -> scan.held(UnitState.IMPLANTED, ours),
                    scan -> scan.held(UnitState.WASTED, Optional.empty()),
                    scan -> scan.held(UnitState.QUARANTINED, Optional.empty()));
            assertThat(taken).allSatisfy(each -> assertThat(codes(each)).containsExactly(CHECK_CARTON_NOT_FREE));
            assertThat(codes(
                            Checkpoint.SIGN_OUT,
                            scan -> scan.held(UnitState.IMPLANTED, Optional.of("ServiceRequest/b2"))))
                    .containsExactly(CHECK_CARTON_NOT_FREE);
        }

        @Test
        void it_is_whole_until_sign_out_and_open_then() {
            assertThat(codes(scan -> scan.found(Optional.of(PackageState.OPENED))))
                    .containsExactly(CHECK_PACKAGE_NOT_INTACT);
            assertThat(codes(Checkpoint.SIGN_OUT, scan -> scan.found(Optional.of(PackageState.INTACT))))
                    .containsExactly(CHECK_PACKAGE_NOT_INTACT);
        }

        @Test
        void a_label_with_nothing_but_a_device_still_has_words() {
            assertThat(new Carton.Label("09506000134352", Optional.empty(), Optional.empty(), Optional.empty()))
                    .hasToString("09506000134352");
        }
    }

    @Nested
    class Given_a_room {

        @Test
        void allergies_are_compared_as_words_whatever_their_case() {
            assertThat(codes(scan -> scan.allergies(Optional.of(Set.of(" penicillin ")))))
                    .isEmpty();
            assertThat(codes(scan -> scan.allergies(Optional.of(Set.of("Penicillin", "Latex")))))
                    .containsExactly(CHECK_ALLERGIES_DIFFER);
            assertThat(differences(
                            Checkpoint.SIGN_IN, Checks.expected(), scan -> scan.allergies(Optional.of(Set.of()))))
                    .extracting(Difference::presented)
                    .containsExactly("none known");
        }

        @Test
        void one_carton_does_not_stand_by_twice_and_not_in_another_role() {
            BackUp spare = new BackUp(KitRole.SPARE, Checks.lens("21.5 D"));
            assertThat(codes(scan -> scan.backUps(List.of(spare)))).containsExactly(CHECK_BACK_UP_ABSENT);
            assertThat(codes(scan ->
                            scan.backUps(List.of(spare, new BackUp(KitRole.ANTERIOR_CHAMBER, Checks.lens("20.5 D"))))))
                    .containsExactly(CHECK_BACK_UP_ABSENT);
        }

        @Test
        void a_back_up_of_another_power_model_or_cylinder_is_named_beside_the_one_wanted() {
            BackUp spare = new BackUp(KitRole.SPARE, Checks.lens("21.5 D"));
            for (CheckedLens wrong : List.of(
                    new CheckedLens("DeviceDefinition/lens-2", Dioptres.of(20), Optional.empty()),
                    new CheckedLens("DeviceDefinition/lens-3", Dioptres.of(20.5), Optional.empty()),
                    new CheckedLens("DeviceDefinition/lens-2", Dioptres.of(20.5), Optional.of(Dioptres.of(1))))) {
                assertThat(differences(
                                Checkpoint.TIME_OUT,
                                Checks.expected(),
                                scan -> scan.backUps(List.of(spare, new BackUp(KitRole.SULCUS, wrong)))))
                        .extracting(Difference::presented)
                        .containsExactly("sulcus " + wrong);
            }
        }

        @Test
        void at_sign_out_back_ups_are_not_asked_for() {
            assertThat(codes(Checkpoint.SIGN_OUT, scan -> scan.backUps(List.of())))
                    .isEmpty();
        }

        @Test
        void two_people_are_two_people() {
            assertThat(codes(scan -> scan.people("Practitioner/nurse-1", " Practitioner/nurse-1")))
                    .containsExactly(CHECK_SECOND_PERSON_MISSING);
            assertThat(codes(scan -> scan.people("Practitioner/nurse-1", "")))
                    .containsExactly(CHECK_SECOND_PERSON_MISSING);
            assertThat(codes(scan -> scan.people(" ", "Practitioner/nurse-1")))
                    .containsExactly(CHECK_SECOND_PERSON_MISSING);
        }

        @Test
        void one_is_enough_where_the_policy_asks_for_no_more_but_none_is_not() {
            assertThat(codes(Checkpoint.PICK, scan -> scan.people("Practitioner/nurse-1", "")))
                    .isEmpty();
            assertThat(codes(Checkpoint.PICK, scan -> scan.people("", "")))
                    .containsExactly(CHECK_SECOND_PERSON_MISSING);
        }
    }

    @Test
    void a_policy_may_not_let_anybody_override_a_fact() {
        assertThatThrownBy(() -> new CheckPolicy(
                        List.of(), List.of(), new Limit<>(Degrees.of(1), "test"), List.of(CHECK_EYE_DIFFERS)))
                .hasMessageContaining("CHECK_EYE_DIFFERS");
    }

    @Test
    void an_expectation_has_a_whole_fingerprint_and_a_failure_says_why() {
        Expected good = Checks.expected();
        assertThatThrownBy(() -> new Expected(
                        good.evidence(),
                        good.booking(),
                        good.patient(),
                        good.eye(),
                        "6f1ed002ab55",
                        good.lens(),
                        good.axis(),
                        LocalDate.of(2026, 1, 1),
                        good.allergies(),
                        good.backUps()))
                .hasMessageContaining("64");
        assertThatThrownBy(() -> new CheckResult.Failed(List.of())).hasMessageContaining("why");
    }
}
