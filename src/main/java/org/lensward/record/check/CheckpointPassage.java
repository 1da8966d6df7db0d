package org.lensward.record.check;

import java.util.ArrayList;
import java.util.List;
import org.lensward.check.Attempt;
import org.lensward.check.CheckPolicy;
import org.lensward.check.CheckState;
import org.lensward.check.Exemption;
import org.lensward.check.Step;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** What one attempt at a checkpoint does to the record. */
final class CheckpointPassage {

    private final Here here;
    private final Attempt attempt;

    CheckpointPassage(Here here, Attempt attempt) {
        this.here = here;
        this.attempt = attempt;
    }

    CheckAnswer answer(CheckPolicy policy) {
        Step step = here.check().progress().present(attempt, here.expected(), here.standing(), policy);
        if (step instanceof Step.Advanced advanced) {
            return here.write(
                    activity("passed"),
                    advanced.next().state(),
                    List.of(),
                    List.of(here.tasks().advanced(attempt, advanced, here.standing())));
        }
        if (step instanceof Step.Stopped stopped) {
            return here.write(
                            activity("failed"),
                            CheckState.FAILED,
                            findings(stopped),
                            List.of(here.tasks().failed(attempt, stopped.differences())))
                    .because(stopped.differences());
        }
        boolean listChanged =
                step instanceof Step.Voided voided && voided.reason().code() == FindingCode.CHECK_LIST_CHANGED;
        return listChanged ? renewed(((Step.Voided) step).reason()) : here.unwritten(step);
    }

    /** A changed plan voids its check when it is published; a changed list publishes nothing, so the check is renewed here. */
    private CheckAnswer renewed(Finding reason) {
        return here.write(
                activity("void"),
                CheckState.CONFIRMED,
                List.of(reason),
                List.of(here.tasks().voided(reason), here.tasks().verifiedAnew(here.nextId())));
    }

    private List<Finding> findings(Step.Stopped stopped) {
        return stopped.differences().stream()
                .map(each -> each.finding(here.expected().evidence()))
                .toList();
    }

    private Here.Activity activity(String result) {
        List<String> agents = new ArrayList<>();
        attempt.presented().people().reader().ifPresent(agents::add);
        attempt.presented().people().second().ifPresent(agents::add);
        if (attempt.exemption() instanceof Exemption.Signed signed) {
            agents.add(signed.clinician());
            agents.add(signed.second());
        }
        if (agents.isEmpty()) {
            agents.add("nobody named");
        }
        return new Here.Activity("Lens check, " + attempt.at().code() + ": " + result, agents);
    }
}
