package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.record.CheckedRecord.BOOKING;
import static org.lensward.record.CheckedRecord.SURGEON;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskStatus;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.check.Attempt;
import org.lensward.check.BackUp;
import org.lensward.check.Carton;
import org.lensward.check.CheckState;
import org.lensward.check.CheckedLens;
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
            CheckAnswer.Write write = record.post(record.checks.confirm(record.record.bundle(), BOOKING, SURGEON));
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
            record.post(
                    record.checks.refuse(record.record.bundle(), BOOKING, new Decision(SURGEON, "see cornea first")));
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
            record.record.change(
                    Observation.class,
                    "length-right",
                    each -> each.setStatus(Observation.ObservationStatus.ENTEREDINERROR));
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
                    .containsExactly("by", "second", "at", "scan", "unit", "carton", "list-place", "result");
            assertThat(outputs(task, "confirmation")).containsExactly("by", "at");
        }

        @Test
        void a_toric_one_is_checked_by_cylinder_and_axis_too() {
            CheckedRecord record = CheckedRecord.planned(WiderRecords.toric()).confirm();
            var expected = record.check().expected();
            assertThat(expected.lens().cylinder()).isPresent();
            assertThat(expected.axis()).isPresent();
            CheckedRecord.assertKept(record.post(record.present(Checkpoint.PICK)));
            CheckAnswer.Write stop = record.post(record.present(
                    Checkpoint.SIGN_IN,
                    each -> CheckedRecord.withLens(
                            each,
                            new CheckedLens(
                                    expected.lens().model(), expected.lens().power(), Optional.empty()))));
            assertThat(stop.findings()).extracting(Finding::code).contains(FindingCode.CHECK_CYLINDER_DIFFERS);
        }

        @Test
        void a_step_before_its_turn_is_refused() {
            assertThat(refusal(CheckedRecord.confirmed().present(Checkpoint.TIME_OUT)))
                    .containsExactly(FindingCode.CHECK_OUT_OF_ORDER);
        }

        @Test
        void a_truncated_scan_is_refused_and_the_task_unchanged() {
            CheckedRecord record = CheckedRecord.confirmed();
            Carton.Label cut = new Carton.Label("0950600013435", Optional.empty(), Optional.empty(), Optional.empty());
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
                            Checkpoint.PICK, CheckedRecord.withBackUps(record.right(Checkpoint.PICK), some), signed)));
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
}
