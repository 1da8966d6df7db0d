package org.lensward.record.check;

import static org.lensward.finding.FindingCode.CHECK_CLOSED;
import static org.lensward.finding.FindingCode.CHECK_NOT_STOPPED;

import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.check.CheckProgress;
import org.lensward.check.CheckState;
import org.lensward.check.Step;
import org.lensward.finding.Finding;
import org.lensward.record.Systems;

/** What a surgeon's word does to a lens check: confirm, refuse, choose again. */
final class SurgeonsWord {

    private static final String CONFIRMED_BY = Systems.extension("confirmed-by");
    private static final String CONFIRMED_AT = Systems.extension("confirmed-at");

    private final Here here;

    SurgeonsWord(Here here) {
        this.here = here;
    }

    CheckAnswer confirm(String surgeon) {
        Step step = here.check().progress().confirm(here.expected(), here.standing());
        return step instanceof Step.Advanced
                ? confirmed("Plan confirmed", surgeon, here.tasks().confirmed(surgeon))
                : here.unwritten(step);
    }

    CheckAnswer refuse(Decision decision) {
        CheckState state = here.state();
        if (state == CheckState.REFUSED) {
            return new CheckAnswer.Unchanged(state);
        }
        if (state != CheckState.AWAITING_CONFIRMATION && state.next().isEmpty()) {
            return new CheckAnswer.Refused(
                    List.of(Finding.of(CHECK_CLOSED, here.expected().evidence(), state)));
        }
        return here.write(
                new Here.Activity("Plan refused", List.of(decision.surgeon())),
                CheckState.REFUSED,
                List.of(),
                List.of(here.tasks().refused(decision)));
    }

    /** After a stop, the same plan in a new check; for another lens the booking is changed. */
    CheckAnswer chooseAgain(Decision decision) {
        CheckState state = here.state();
        if (state != CheckState.FAILED && state != CheckState.REFUSED) {
            return new CheckAnswer.Refused(
                    List.of(Finding.of(CHECK_NOT_STOPPED, here.expected().evidence(), state)));
        }
        Step step = CheckProgress.opened().confirm(here.expected(), here.standing());
        return step instanceof Step.Advanced
                ? confirmed(
                        "Lens chosen again", decision.surgeon(), here.tasks().again(here.nextId(), decision))
                : here.unwritten(step);
    }

    private CheckAnswer confirmed(String activity, String surgeon, Resource task) {
        List<Resource> changed = new ArrayList<>(List.of(task));
        here.gathered().plan().map(each -> marked(each, surgeon)).ifPresent(changed::add);
        return here.write(new Here.Activity(activity, List.of(surgeon)), CheckState.CONFIRMED, List.of(), changed);
    }

    private Procedure marked(Procedure plan, String surgeon) {
        Procedure copy = plan.copy();
        copy.setId(plan.getIdElement().toUnqualifiedVersionless());
        copy.getExtension().removeIf(each -> CONFIRMED_BY.equals(each.getUrl()) || CONFIRMED_AT.equals(each.getUrl()));
        copy.addExtension(CONFIRMED_BY, Outputs.who(surgeon));
        copy.addExtension(CONFIRMED_AT, new DateTimeType(Outputs.written(here.now())));
        return copy;
    }
}
