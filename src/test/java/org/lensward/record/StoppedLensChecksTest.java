package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.record.CheckedRecord.BOOKING;
import static org.lensward.record.CheckedRecord.SURGEON;

import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskStatus;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.check.Checkpoint;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.Decision;

/** A lens check that a difference stops, and what a surgeon's new choice or a new plan makes of it. */
class StoppedLensChecksTest {

    private static final Decision AGAIN = new Decision(SURGEON, "carton of another list");

    private static List<FindingCode> refusal(CheckAnswer answer) {
        assertThat(answer).isInstanceOf(CheckAnswer.Refused.class);
        return answer.findings().stream().map(Finding::code).toList();
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
            assertThat(stop.outcome().getIssue()).hasSize(2).allSatisfy(each -> assertThat(
                            each.getDetails().getCodingFirstRep().getCode())
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
            assertThat(refusal(record.checks.chooseAgain(record.record.bundle(), BOOKING, new Decision(SURGEON, " "))))
                    .containsExactly(FindingCode.CHECK_SURGEON_UNNAMED);
            assertThat(refusal(record.checks.chooseAgain(record.record.bundle(), BOOKING, new Decision("", "why"))))
                    .containsExactly(FindingCode.CHECK_SURGEON_UNNAMED);
        }

        @Test
        void chosen_again_a_new_task_replaces_it_and_starts_from_the_pick() {
            CheckedRecord.assertKept(record.post(record.checks.chooseAgain(record.record.bundle(), BOOKING, AGAIN)));
            Task fresh = record.task(first + "-2");
            assertThat(((Reference) fresh.getExtensionByUrl("https://lensward.org/fhir/StructureDefinition/replaces")
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
}
