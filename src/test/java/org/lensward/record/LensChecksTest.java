package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.lensward.record.CheckedRecord.BOOKING;
import static org.lensward.record.CheckedRecord.SURGEON;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Appointment.AppointmentStatus;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskStatus;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.check.Attempt;
import org.lensward.check.BackUp;
import org.lensward.check.Carton;
import org.lensward.check.CheckState;
import org.lensward.check.Checkpoint;
import org.lensward.check.Exemption;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.Decision;

/** The lens check against the record, step by step, each transaction held to HL7's validator and our profiles. */
class LensChecksTest {

    private static final Decision AGAIN = new Decision(SURGEON, "carton of another list");

    private static List<FindingCode> refusal(CheckAnswer answer) {
        assertThat(answer).isInstanceOf(CheckAnswer.Refused.class);
        return answer.findings().stream().map(Finding::code).toList();
    }

    @Nested
    class Given_a_plan {

        private final CheckedRecord record = CheckedRecord.planned();

        @Test
        void its_check_expects_what_was_planned() {
            var expected = record.check().expected();
            assertThat(expected.booking()).isEqualTo(BOOKING);
            assertThat(expected.patient().isComplete()).isTrue();
            assertThat(expected.operation()).hasToString("2026-03-16");
            assertThat(expected.allergies()).containsExactly("Penicillin");
            assertThat(expected.lens().model()).isEqualTo("DeviceDefinition/bag");
            assertThat(expected.backUps())
                    .extracting(each -> each.role().code())
                    .containsExactly("spare", "sulcus", "anterior-chamber");
            assertThat(expected.backUps().get(0).lens()).isEqualTo(expected.lens());
            assertThat(record.check().progress().state()).isEqualTo(CheckState.AWAITING_CONFIRMATION);
        }

        @Test
        void nothing_is_picked_before_a_surgeon_confirms() {
            assertThat(refusal(record.present(Checkpoint.PICK))).containsExactly(FindingCode.CHECK_NOT_CONFIRMED);
        }

        @Test
        void a_surgeon_confirms_it_and_says_who_and_when() {
            CheckAnswer.Write write =
                    record.post(record.checks.confirm(record.record.bundle(), BOOKING, SURGEON));
            CheckedRecord.assertKept(write);
            assertThat(write.state()).isEqualTo(CheckState.CONFIRMED);
            Procedure plan = Publishing.all(write.transaction(), Procedure.class)
                    .findFirst()
                    .orElseThrow();
            assertThat(plan.getExtensionByUrl("https://lensward.org/fhir/StructureDefinition/confirmed-at")
                            .getValue()
                            .primitiveValue())
                    .isEqualTo("2026-03-16T09:40:00Z");
            assertThat(record.tasks()).extracting(Task::getStatus).containsExactly(TaskStatus.ACCEPTED);
            Provenance trail = Publishing.all(write.transaction(), Provenance.class)
                    .findFirst()
                    .orElseThrow();
            assertThat(trail.getAgentFirstRep().getWho().getReference()).isEqualTo(SURGEON);
            assertThat(trail.getTarget())
                    .extracting(Reference::getReference)
                    .containsExactly(Shelf.name(record.tasks().get(0)), "Procedure/plan-b1");
        }

        @Test
        void confirmed_twice_it_is_written_once_and_the_adapter_writes_nothing() {
            record.post(record.checks.confirm(record.record.bundle(), BOOKING, SURGEON));
            assertThat(record.checks.confirm(record.record.bundle(), BOOKING, SURGEON))
                    .isEqualTo(new CheckAnswer.Unchanged(CheckState.CONFIRMED));
            assertThat(Publishing.publish(record.record))
                    .isEqualTo(new Publication.Nothing(Publication.Reason.UNCHANGED));
        }

        @Test
        void nobody_confirms_it_namelessly() {
            assertThat(refusal(record.checks.confirm(record.record.bundle(), BOOKING, " ")))
                    .containsExactly(FindingCode.CHECK_SURGEON_UNNAMED);
        }

        @Test
        void refused_it_goes_nowhere_until_a_surgeon_chooses() {
            record.post(record.checks.refuse(record.record.bundle(), BOOKING, new Decision(SURGEON, "see cornea first")));
            assertThat(record.tasks()).extracting(Task::getStatus).containsExactly(TaskStatus.REJECTED);
            assertThat(record.checks.refuse(record.record.bundle(), BOOKING, AGAIN))
                    .isEqualTo(new CheckAnswer.Unchanged(CheckState.REFUSED));
            assertThat(refusal(record.checks.confirm(record.record.bundle(), BOOKING, SURGEON)))
                    .containsExactly(FindingCode.CHECK_STOPPED);
            CheckedRecord.assertKept(record.post(record.checks.chooseAgain(record.record.bundle(), BOOKING, AGAIN)));
            assertThat(record.check().progress().state()).isEqualTo(CheckState.CONFIRMED);
        }

        @Test
        void a_patient_with_one_identifier_is_seen_at_the_confirmation() {
            record.record.change(
                    Patient.class, "p1", each -> each.getIdentifier().remove(1));
            Publishing.published(record.record);
            assertThat(refusal(record.checks.confirm(record.record.bundle(), BOOKING, SURGEON)))
                    .containsExactly(FindingCode.CHECK_IDENTITY_INCOMPLETE);
        }

        @Test
        void a_year_is_no_date_of_birth() {
            record.record.change(
                    Patient.class, "p1", each -> each.getBirthDateElement().setValueAsString("1960"));
            Publishing.published(record.record);
            assertThat(record.check().expected().patient().birthDate()).isEmpty();
        }

        @Test
        void withheld_there_is_no_check() {
            record.record.change(Observation.class, "length-right", each -> each.setStatus(
                    Observation.ObservationStatus.ENTEREDINERROR));
            Publishing.published(record.record);
            assertThat(refusal(record.checks.confirm(record.record.bundle(), BOOKING, SURGEON)))
                    .containsExactly(FindingCode.CHECK_NONE_OPEN);
        }
    }

    @Nested
    class Given_the_right_lens {

        @Test
        void every_checkpoint_is_passed_and_left_on_record() {
            CheckedRecord record = CheckedRecord.confirmed();
            for (Checkpoint at : Checkpoint.values()) {
                CheckAnswer.Write write = record.post(record.present(at));
                CheckedRecord.assertKept(write);
                assertThat(write.findings()).isEmpty();
                assertThat(write.outcome().getIssueFirstRep().getSeverity().toCode())
                        .isEqualTo("information");
                assertThat(record.present(at)).isEqualTo(new CheckAnswer.Unchanged(at.reached()));
            }
            Task task = record.tasks().get(0);
            assertThat(task.getStatus()).isEqualTo(TaskStatus.COMPLETED);
            assertThat(outputs(task, "before-opening"))
                    .containsExactly(
                            "by", "second", "at", "scan", "unit", "carton", "list-place", "result");
            assertThat(outputs(task, "confirmation")).containsExactly("by", "at");
        }

        @Test
        void a_step_before_its_turn_is_refused() {
            assertThat(refusal(CheckedRecord.confirmed().present(Checkpoint.TIME_OUT)))
                    .containsExactly(FindingCode.CHECK_OUT_OF_ORDER);
        }

        @Test
        void a_truncated_scan_is_refused_and_the_task_unchanged() {
            CheckedRecord record = CheckedRecord.confirmed();
            Carton.Label cut = new Carton.Label(
                    "0950600013435", Optional.empty(), Optional.empty(), Optional.empty());
            Carton.Label bare = new Carton.Label("", Optional.empty(), Optional.empty(), Optional.empty());
            for (Carton.Label label : List.of(cut, bare)) {
                assertThat(refusal(record.present(
                                Checkpoint.PICK,
                                each -> CheckedRecord.withCarton(
                                        each,
                                        new Carton(
                                                "010950600013435",
                                                label,
                                                Optional.empty(),
                                                each.carton().read(),
                                                each.carton().state())))))
                        .containsExactly(FindingCode.CHECK_SCAN_UNREADABLE);
            }
        }

        @Test
        void once_the_operation_has_begun_a_new_measurement_holds_nobody_up() {
            CheckedRecord record = CheckedRecord.upTo(Checkpoint.BEFORE_OPENING);
            record.record.change(Procedure.class, "plan-b1", each -> each.setStatus(ProcedureStatus.INPROGRESS));
            record.record.change(
                    Observation.class, "length-right", each -> each.setValue(Bundles.quantity("24.10", "mm")));
            assertThat(record.post(record.present(Checkpoint.SIGN_OUT)).state()).isEqualTo(CheckState.COMPLETED);
        }

        private static List<String> outputs(Task task, String stage) {
            return task.getOutput().stream()
                    .filter(each -> each.getType().getCoding().get(1).getCode().equals(stage))
                    .map(each -> each.getType().getCoding().get(0).getCode())
                    .toList();
        }
    }

    @Nested
    class Given_the_wrong_lens {

        private final CheckedRecord record = CheckedRecord.upTo(Checkpoint.SIGN_IN);
        private final String first = record.tasks().get(0).getIdElement().getIdPart();
        private final CheckAnswer.Write stop = record.post(record.present(
                Checkpoint.TIME_OUT,
                each -> CheckedRecord.stronger(each, record.check().expected())));

        @Test
        void the_task_fails_and_names_each_difference() {
            CheckedRecord.assertKept(stop);
            Task task = record.task(first);
            assertThat(task.getStatus()).isEqualTo(TaskStatus.FAILED);
            assertThat(task.getStatusReason().getText()).contains("by the bank", "on the box");
            assertThat(stop.outcome().getIssue())
                    .hasSize(2)
                    .allSatisfy(each -> assertThat(each.getDetails().getCodingFirstRep().getCode())
                            .isEqualTo("check-power-differs"));
        }

        @ParameterizedTest
        @EnumSource
        void no_step_is_taken_any_more_not_even_with_the_right_lens(Checkpoint at) {
            assertThat(refusal(record.present(at))).containsExactly(FindingCode.CHECK_STOPPED);
        }

        @Test
        void planning_again_does_not_clear_it() {
            assertThat(Publishing.publish(record.record))
                    .isEqualTo(new Publication.Nothing(Publication.Reason.UNCHANGED));
        }

        @Test
        void only_a_surgeon_with_a_reason_chooses_again() {
            assertThat(refusal(record.checks.chooseAgain(
                            record.record.bundle(), BOOKING, new Decision(SURGEON, " "))))
                    .containsExactly(FindingCode.CHECK_SURGEON_UNNAMED);
            assertThat(refusal(record.checks.chooseAgain(
                            record.record.bundle(), BOOKING, new Decision("", "why"))))
                    .containsExactly(FindingCode.CHECK_SURGEON_UNNAMED);
        }

        @Test
        void chosen_again_a_new_task_replaces_it_and_starts_from_the_pick() {
            CheckedRecord.assertKept(record.post(record.checks.chooseAgain(record.record.bundle(), BOOKING, AGAIN)));
            Task fresh = record.task(first + "-2");
            assertThat(((Reference) fresh.getExtensionByUrl(
                                            "https://lensward.org/fhir/StructureDefinition/replaces")
                                    .getValue())
                            .getReference())
                    .isEqualTo("Task/" + first);
            assertThat(record.task(first).getStatus()).isEqualTo(TaskStatus.FAILED);
            assertThat(refusal(record.present(Checkpoint.TIME_OUT))).containsExactly(FindingCode.CHECK_OUT_OF_ORDER);
            assertThat(refusal(record.checks.chooseAgain(record.record.bundle(), BOOKING, AGAIN)))
                    .containsExactly(FindingCode.CHECK_NOT_STOPPED);
            for (Checkpoint at : Checkpoint.values()) {
                record.post(record.present(at));
            }
            assertThat(record.task(first + "-2").getStatus()).isEqualTo(TaskStatus.COMPLETED);
        }

        @Test
        void failed_again_and_chosen_again_it_is_the_third() {
            record.post(record.checks.chooseAgain(record.record.bundle(), BOOKING, AGAIN));
            record.post(record.present(
                    Checkpoint.PICK,
                    each -> CheckedRecord.stronger(each, record.check().expected())));
            record.post(record.checks.chooseAgain(record.record.bundle(), BOOKING, AGAIN));
            assertThat(record.task(first + "-3").getStatus()).isEqualTo(TaskStatus.ACCEPTED);
        }

        @Test
        void another_plan_replaces_the_failed_check_which_stays_failed() {
            record.record.change(
                    Observation.class, "length-right", each -> each.setValue(Bundles.quantity("24.10", "mm")));
            Bundle written = Publishing.written(Publishing.publish(record.record));
            Task fresh = Publishing.all(written, Task.class).findFirst().orElseThrow();
            assertThat(Publishing.all(written, Task.class)).hasSize(1);
            assertThat(fresh.getExtension())
                    .extracting(each -> ((Reference) each.getValue()).getReference())
                    .containsExactly("Task/" + first);
        }

        @Test
        void another_plan_voids_the_check_that_was_opened_again() {
            record.post(record.checks.chooseAgain(record.record.bundle(), BOOKING, AGAIN));
            record.record.change(
                    Observation.class, "length-right", each -> each.setValue(Bundles.quantity("24.10", "mm")));
            Bundle written = Publishing.written(Publishing.publish(record.record));
            assertThat(Publishing.all(written, Task.class))
                    .filteredOn(each -> each.getStatus() == TaskStatus.CANCELLED)
                    .extracting(each -> each.getIdElement().getIdPart())
                    .containsExactly(first + "-2");
        }
    }

    @Nested
    class Given_a_judgement {

        @Test
        void overridden_by_two_it_is_recorded_with_its_reason() {
            CheckedRecord record = CheckedRecord.confirmed();
            List<BackUp> some = record.check().expected().backUps().subList(0, 2);
            Exemption signed = new Exemption.Signed(SURGEON, "none in the house", "Practitioner/nurse-1");
            CheckAnswer.Write write = record.post(record.checks.present(
                    record.record.bundle(),
                    BOOKING,
                    new Attempt(
                            Checkpoint.PICK,
                            CheckedRecord.withBackUps(record.right(Checkpoint.PICK), some),
                            signed)));
            CheckedRecord.assertKept(write);
            assertThat(write.state()).isEqualTo(CheckState.PICKED);
            assertThat(record.tasks().get(0).getOutput())
                    .extracting(each -> each.getType().getCodingFirstRep().getCode())
                    .contains("difference", "overridden-by", "override-second", "override-reason");
            assertThat(Publishing.all(write.transaction(), Provenance.class))
                    .flatExtracting(Provenance::getAgent)
                    .extracting(each -> each.getWho().getReference())
                    .containsExactly("Practitioner/nurse-1", "Practitioner/nurse-2", SURGEON);
        }
    }

    @Nested
    class Given_a_change_of_ground {

        private final CheckedRecord record = CheckedRecord.upTo(Checkpoint.SIGN_IN);
        private final String first = record.tasks().get(0).getIdElement().getIdPart();

        @Test
        void a_new_measurement_stops_the_next_step_even_before_it_is_planned_again() {
            record.record.change(
                    Observation.class, "length-right", each -> each.setValue(Bundles.quantity("24.10", "mm")));
            assertThat(refusal(record.present(Checkpoint.TIME_OUT))).containsExactly(FindingCode.CHECK_PLAN_CHANGED);
            Publishing.published(record.record);
            assertThat(record.task(first).getStatus()).isEqualTo(TaskStatus.CANCELLED);
            assertThat(record.check().progress().state()).isEqualTo(CheckState.AWAITING_CONFIRMATION);
        }

        @Test
        void a_booking_withdrawn_stops_it_too() {
            record.record.booking(each -> each.setStatus(
                    ServiceRequest.ServiceRequestStatus.REVOKED));
            assertThat(refusal(record.present(Checkpoint.TIME_OUT))).containsExactly(FindingCode.CHECK_PLAN_CHANGED);
        }

        @Test
        void another_hour_on_the_list_voids_what_was_verified_and_keeps_the_confirmation() {
            record.record.change(Appointment.class, "own", each -> each.setStartElement(
                    new InstantType("2026-03-16T13:00:00+01:00")));
            assertThat(Publishing.publish(record.record))
                    .isEqualTo(new Publication.Nothing(Publication.Reason.UNCHANGED));
            CheckAnswer.Write write = record.post(record.present(Checkpoint.TIME_OUT));
            CheckedRecord.assertKept(write);
            assertThat(write.findings())
                    .extracting(Finding::code)
                    .containsExactly(FindingCode.CHECK_LIST_CHANGED);
            assertThat(record.task(first).getStatus()).isEqualTo(TaskStatus.CANCELLED);
            assertThat(record.task(first + "-2").getStatus()).isEqualTo(TaskStatus.ACCEPTED);
            assertThat(refusal(record.present(Checkpoint.TIME_OUT))).containsExactly(FindingCode.CHECK_OUT_OF_ORDER);
            record.post(record.present(Checkpoint.PICK));
        }

        @Test
        void another_patient_moved_on_the_same_list_voids_it_as_well() {
            record.record.change(Appointment.class, "first", each -> each.setStatus(AppointmentStatus.CANCELLED));
            assertThat(record.post(record.present(Checkpoint.TIME_OUT)).findings())
                    .extracting(Finding::code)
                    .containsExactly(FindingCode.CHECK_LIST_CHANGED);
        }

        @Test
        void another_theatres_list_or_another_days_does_not_matter() {
            Appointment elsewhere = CheckedRecord.appointment("elsewhere", "2026-03-16T07:00:00+01:00");
            elsewhere.getParticipantFirstRep().setActor(new Reference("Location/theatre-2"));
            record.record.add(elsewhere);
            record.record.add(CheckedRecord.appointment("yesterday", "2026-03-15T07:00:00+01:00"));
            assertThat(record.post(record.present(Checkpoint.TIME_OUT)).state()).isEqualTo(CheckState.TIMED_OUT);
        }

        @Test
        void taken_off_the_list_it_is_no_longer_where_it_was() {
            record.record.change(Appointment.class, "own", each -> each.setStatus(AppointmentStatus.NOSHOW));
            assertThat(record.present(Checkpoint.TIME_OUT).findings())
                    .extracting(Finding::message)
                    .anyMatch(each -> each.contains("not listed"));
        }

        @Test
        void refused_by_the_surgeon_in_mid_way_it_ends() {
            record.post(record.checks.refuse(record.record.bundle(), BOOKING, AGAIN));
            assertThat(refusal(record.present(Checkpoint.TIME_OUT))).containsExactly(FindingCode.CHECK_STOPPED);
            CheckedRecord done = CheckedRecord.upTo(Checkpoint.SIGN_OUT);
            assertThat(refusal(done.checks.refuse(done.record.bundle(), BOOKING, AGAIN)))
                    .containsExactly(FindingCode.CHECK_CLOSED);
        }
    }

    @Nested
    class Given_a_record_that_cannot_be_relied_on {

        private final CheckedRecord record = CheckedRecord.confirmed();
        private final String id = record.tasks().get(0).getIdElement().getIdPart();

        private void spoil(Consumer<Task> spoil) {
            record.record.change(Task.class, id, spoil);
        }

        private Optional<Task.ParameterComponent> input(Task task, String code) {
            return task.getInput().stream()
                    .filter(each -> each.getType().getCodingFirstRep().getCode().equals(code))
                    .findFirst();
        }

        private void assertUnreadable(String words) {
            Bundle gathered = record.record.bundle();
            assertThatThrownBy(() -> record.checks.find(gathered, BOOKING))
                    .isInstanceOf(UnreadableRecord.class)
                    .hasMessageContaining(words);
        }

        @Test
        void an_input_that_is_missing_is_named() {
            spoil(task -> task.getInput().remove(input(task, "eye").orElseThrow()));
            assertUnreadable("eye");
        }

        @Test
        void an_input_that_stands_there_twice_is_named() {
            spoil(task -> task.addInput(input(task, "lens-power").orElseThrow().copy()));
            assertUnreadable("lens-power");
        }

        @Test
        void a_power_in_another_unit_an_eye_that_is_both_and_a_day_that_is_none_are_named() {
            spoil(task -> input(task, "lens-power").orElseThrow().setValue(Bundles.quantity("21.5", "mm")));
            assertUnreadable("lens-power");
            spoil(task -> input(task, "lens-power").orElseThrow().setValue(Bundles.dioptres("21.5")));
            spoil(task -> input(task, "eye").orElseThrow().setValue(Bundles.snomed("40638003")));
            assertUnreadable("eye");
            spoil(task -> input(task, "eye").orElseThrow().setValue(Bundles.snomed("1290032005")));
            spoil(task -> input(task, "operation-day")
                    .orElseThrow()
                    .setValue(new DateType("2026-03")));
            assertUnreadable("operation-day");
        }

        @Test
        void a_back_up_whose_request_is_gone_is_named() {
            record.record.remove("DeviceRequest/plan-b1-sulcus");
            assertUnreadable("back-up");
        }

        @Test
        void a_status_that_was_set_by_hand_is_not_believed() {
            spoil(task -> task.setStatus(TaskStatus.COMPLETED));
            assertUnreadable("status");
        }

        @Test
        void without_a_version_nothing_is_overwritten() {
            Bundle gathered = record.record.bundle();
            gathered.getEntry().forEach(each -> each.getResource().getMeta().setVersionId(null));
            record.record.all().forEach(each -> each.getMeta().setVersionId(null));
            assertThatThrownBy(() -> record.checks.refuse(gathered, BOOKING, AGAIN))
                    .isInstanceOf(UnreadableRecord.class)
                    .hasMessageContaining("version");
        }

        @Test
        void a_booking_that_was_not_gathered_is_named() {
            Bundle gathered = record.record.bundle();
            assertThatThrownBy(() -> record.checks.confirm(gathered, "ServiceRequest/b9", SURGEON))
                    .isInstanceOf(UnreadableRecord.class);
        }
    }
}
