package org.lensward.record.check;

import static java.util.stream.Collectors.joining;

import java.time.OffsetDateTime;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Task;
import org.lensward.check.Attempt;
import org.lensward.check.CheckState;
import org.lensward.check.Difference;
import org.lensward.check.Exemption;
import org.lensward.check.Presented;
import org.lensward.check.Standing;
import org.lensward.check.Step;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.record.Legible;
import org.lensward.record.Systems;

/** How the Task of a lens check changes with each step; the Task given is left as it is. */
final class CheckTasks {

    private static final String REPLACES = Systems.extension("replaces");

    private final StoredCheck check;
    private final OffsetDateTime now;

    CheckTasks(StoredCheck check, OffsetDateTime now) {
        this.check = check;
        this.now = now;
    }

    Task confirmed(String surgeon) {
        Task task = in(CheckState.CONFIRMED);
        new Outputs(task, Outputs.CONFIRMATION)
                .person("by", Optional.of(surgeon))
                .time(now);
        return task;
    }

    Task refused(Decision decision) {
        Task task = in(CheckState.REFUSED);
        new Outputs(task, Outputs.CONFIRMATION)
                .person("by", Optional.of(decision.surgeon()))
                .time(now);
        return task.setStatusReason(new CodeableConcept().setText(decision.reason()));
    }

    Task advanced(Attempt attempt, Step.Advanced step, Standing standing) {
        Task task = in(step.next().state());
        Outputs outputs = stage(task, attempt)
                .text("carton", Optional.of(attempt.presented().carton().label().toString()))
                .text("list-place", Optional.of(standing.place()))
                .result(step.overridden().isEmpty() ? "passed" : "overridden")
                .differences(step.overridden(), evidence());
        if (!step.overridden().isEmpty() && attempt.exemption() instanceof Exemption.Signed signed) {
            outputs.person("overridden-by", Optional.of(signed.clinician()))
                    .person("override-second", Optional.of(signed.second()))
                    .text("override-reason", Optional.of(signed.reason()));
        }
        return task;
    }

    /** A stage that had passed and fails on looking again keeps what had passed, in the Task's earlier version. */
    Task failed(Attempt attempt, List<Difference> differences) {
        Task task = in(CheckState.FAILED);
        task.getOutput().removeIf(each -> each.getType().getCoding().stream()
                .anyMatch(coding -> attempt.at().code().equals(coding.getCode())));
        stage(task, attempt).result("failed").differences(differences, evidence());
        return task.setStatusReason(reason(
                differences.stream().map(each -> each.finding(evidence())).toList()));
    }

    Task voided(Finding why) {
        return in(CheckState.VOID).setStatusReason(reason(List.of(why)));
    }

    /** The check that takes this one's place: the same expectations, nothing verified, confirmed by that surgeon. */
    Task again(String id, Decision decision) {
        Task task = successor(id);
        new Outputs(task, Outputs.CONFIRMATION)
                .person("by", Optional.of(decision.surgeon()))
                .time(now)
                .text("reason", Optional.of(decision.reason()));
        return task;
    }

    /** The same for a list that changed: the surgeon's confirmation is of the plan and stands. */
    Task verifiedAnew(String id) {
        Task task = successor(id);
        new Outputs(task, Outputs.CONFIRMATION).from(check.task());
        return task;
    }

    private Task successor(String id) {
        Task task = in(CheckState.CONFIRMED);
        task.setId(id);
        task.getMeta().setVersionId(null).setLastUpdated(null);
        task.setStatusReason(null);
        task.getOutput().clear();
        task.getExtension().removeIf(each -> REPLACES.equals(each.getUrl()));
        task.addExtension(REPLACES, new Reference(check.expected().evidence().resource()));
        return task;
    }

    private Task in(CheckState state) {
        Task task = check.task().copy();
        task.setId(check.task().getIdElement().toUnqualifiedVersionless());
        TaskState.write(task, state);
        task.setLastModified(Date.from(now.toInstant()));
        return task;
    }

    private static Outputs stage(Task task, Attempt attempt) {
        Presented presented = attempt.presented();
        return new Outputs(task, attempt.at().code())
                .person("by", presented.people().reader())
                .person("second", presented.people().second())
                .time(presented.at())
                .text("scan", Optional.of(Legible.text(presented.carton().raw())))
                .device("unit", presented.carton().unit().map(each -> each.evidence()
                        .resource()));
    }

    private Evidence evidence() {
        return check.expected().evidence();
    }

    private static CodeableConcept reason(List<Finding> findings) {
        CodeableConcept reason = new CodeableConcept();
        Stream<String> codes = findings.stream().map(each -> each.code().code()).distinct();
        codes.forEach(
                each -> reason.addCoding(new Coding().setSystem(Systems.FINDING).setCode(each)));
        return reason.setText(findings.stream().map(Finding::message).collect(joining(" ")));
    }
}
