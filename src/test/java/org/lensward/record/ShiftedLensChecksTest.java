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
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskStatus;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.check.CheckState;
import org.lensward.check.Checkpoint;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.Decision;

/** A lens check whose ground shifts under it, or whose record cannot be relied on. */
class ShiftedLensChecksTest {

    private static final Decision AGAIN = new Decision(SURGEON, "carton of another list");

    private static List<FindingCode> refusal(CheckAnswer answer) {
        assertThat(answer).isInstanceOf(CheckAnswer.Refused.class);
        return answer.findings().stream().map(Finding::code).toList();
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
            record.record.booking(each -> each.setStatus(ServiceRequest.ServiceRequestStatus.REVOKED));
            assertThat(refusal(record.present(Checkpoint.TIME_OUT))).containsExactly(FindingCode.CHECK_PLAN_CHANGED);
        }

        @Test
        void another_hour_on_the_list_voids_what_was_verified_and_keeps_the_confirmation() {
            record.record.change(
                    Appointment.class,
                    "own",
                    each -> each.setStartElement(new InstantType("2026-03-16T13:00:00+01:00")));
            assertThat(Publishing.publish(record.record))
                    .isEqualTo(new Publication.Nothing(Publication.Reason.UNCHANGED));
            CheckAnswer.Write write = record.post(record.present(Checkpoint.TIME_OUT));
            CheckedRecord.assertKept(write);
            assertThat(write.findings()).extracting(Finding::code).containsExactly(FindingCode.CHECK_LIST_CHANGED);
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
            spoil(task -> input(task, "operation-day").orElseThrow().setValue(new DateType("2026-03")));
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
