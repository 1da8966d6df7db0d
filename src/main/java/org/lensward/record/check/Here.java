package org.lensward.record.check;

import java.time.OffsetDateTime;
import java.util.List;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.check.CheckState;
import org.lensward.check.Expected;
import org.lensward.check.Standing;
import org.lensward.check.Step;
import org.lensward.finding.Finding;

/**
 * One lens check at one moment.
 *
 * @param gathered what was gathered about the booking
 * @param check the check that stands
 * @param standing what the record says now
 * @param now the moment
 */
record Here(GatheredCheck gathered, StoredCheck check, Standing standing, OffsetDateTime now) {

    Expected expected() {
        return check.expected();
    }

    CheckState state() {
        return check.progress().state();
    }

    CheckTasks tasks() {
        return new CheckTasks(check, now);
    }

    /** The id of the check that takes this one's place. */
    String nextId() {
        return check.nextId(gathered.shelf());
    }

    /** Where nothing is written. */
    CheckAnswer unwritten(Step step) {
        if (step instanceof Step.Refused refused) {
            return new CheckAnswer.Refused(refused.reasons());
        }
        return step instanceof Step.Voided voided
                ? new CheckAnswer.Refused(List.of(voided.reason()))
                : new CheckAnswer.Unchanged(state());
    }

    /**
     * What is written.
     *
     * @param state where the check stands then
     * @param findings what the people are told
     */
    CheckAnswer.Write write(
            Activity activity, CheckState state, List<Finding> findings, List<? extends Resource> changed) {
        return new CheckAnswer.Write(
                new CheckTransaction(gathered.shelf(), now).of(activity.words(), activity.agents(), changed),
                state,
                findings);
    }

    /**
     * What is done and by whom.
     *
     * @param words such as {@code Lens check: pick}
     * @param agents everybody who answers for it
     */
    record Activity(String words, List<String> agents) {}
}
