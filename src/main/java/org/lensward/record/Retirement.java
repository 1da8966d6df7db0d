package org.lensward.record;

import java.util.Optional;
import java.util.Set;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DetectedIssue.DetectedIssueStatus;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.DeviceRequest.DeviceRequestStatus;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.RiskAssessment;
import org.hl7.fhir.r4.model.RiskAssessment.RiskAssessmentStatus;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskStatus;

/** How a piece of an earlier plan is taken back: kept, with the status that says it no longer holds. */
final class Retirement {

    private static final Set<String> RETIRED = Set.of("revoked", "cancelled", "not-done", "entered-in-error");

    /** A check that was stopped or refused stays what it is: it says what nearly happened. */
    static final Set<TaskStatus> STOPPED = Set.of(TaskStatus.FAILED, TaskStatus.REJECTED);

    private Retirement() {}

    /** The resource taken back; empty if it already was, or is of no kind that a plan is made of. */
    static Optional<Resource> of(Resource resource, String reason) {
        Resource copy = resource.copy();
        copy.setId(resource.getIdElement().toUnqualifiedVersionless());
        if (copy instanceof DeviceRequest request && open(request.getStatus().toCode())) {
            return Optional.of(request.setStatus(DeviceRequestStatus.REVOKED));
        }
        if (copy instanceof Observation observation
                && open(observation.getStatus().toCode())) {
            return Optional.of(observation.setStatus(ObservationStatus.CANCELLED));
        }
        if (copy instanceof RiskAssessment assessment
                && open(assessment.getStatus().toCode())) {
            return Optional.of(assessment.setStatus(RiskAssessmentStatus.CANCELLED));
        }
        if (copy instanceof DetectedIssue issue && open(issue.getStatus().toCode())) {
            return Optional.of(issue.setStatus(DetectedIssueStatus.CANCELLED));
        }
        if (copy instanceof Procedure plan && open(plan.getStatus().toCode())) {
            return Optional.of(
                    plan.setStatus(ProcedureStatus.NOTDONE).setStatusReason(new CodeableConcept().setText(reason)));
        }
        return copy instanceof Task task
                        && !STOPPED.contains(task.getStatus())
                        && open(task.getStatus().toCode())
                ? Optional.of(cancelled(task, reason))
                : Optional.empty();
    }

    private static Task cancelled(Task task, String reason) {
        return task.setStatus(TaskStatus.CANCELLED)
                .setStatusReason(new CodeableConcept().setText(reason))
                .setBusinessStatus(Codes.concept(Systems.CHECK_STATE, "void", "Void"));
    }

    private static boolean open(String status) {
        return !RETIRED.contains(status);
    }
}
