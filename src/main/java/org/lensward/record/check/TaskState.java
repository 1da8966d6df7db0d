package org.lensward.record.check;

import java.util.Optional;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskStatus;
import org.lensward.check.CheckState;
import org.lensward.record.Codes;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;
import org.lensward.record.UnreadableRecord;

/** Where a lens check stands: FHIR's word in the Task's status, ours in its business status. */
final class TaskState {

    private TaskState() {}

    /** The state of a Task whose two words agree. */
    static CheckState read(Task task) {
        Optional<CheckState> state =
                Codes.in(task.getBusinessStatus(), Systems.CHECK_STATE).flatMap(CheckState::of);
        return state.filter(each -> status(each) == task.getStatus())
                .orElseThrow(
                        () -> new UnreadableRecord(
                                IssueType.BUSINESSRULE,
                                Shelf.name(task) + ".businessStatus",
                                "The lens check's status and business status do not belong together; let the plan be made again."));
    }

    static void write(Task task, CheckState state) {
        task.setStatus(status(state));
        task.setBusinessStatus(Codes.concept(Systems.CHECK_STATE, state.code(), display(state)));
    }

    private static TaskStatus status(CheckState state) {
        return switch (state) {
            case AWAITING_CONFIRMATION -> TaskStatus.REQUESTED;
            case CONFIRMED -> TaskStatus.ACCEPTED;
            case PICKED, SIGNED_IN, TIMED_OUT, CLEARED_TO_OPEN -> TaskStatus.INPROGRESS;
            case COMPLETED -> TaskStatus.COMPLETED;
            case FAILED -> TaskStatus.FAILED;
            case REFUSED -> TaskStatus.REJECTED;
            case VOID -> TaskStatus.CANCELLED;
        };
    }

    private static String display(CheckState state) {
        return switch (state) {
            case AWAITING_CONFIRMATION -> "Awaiting the surgeon's confirmation";
            case CONFIRMED -> "Confirmed by a surgeon";
            case PICKED -> "Picked";
            case SIGNED_IN -> "Signed in";
            case TIMED_OUT -> "Timed out";
            case CLEARED_TO_OPEN -> "Cleared to open";
            case COMPLETED -> "Completed";
            case FAILED -> "Failed";
            case REFUSED -> "Refused by a surgeon";
            case VOID -> "Void";
        };
    }
}
