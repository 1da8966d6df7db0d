package org.lensward.record.check;

import static org.lensward.finding.FindingCode.CHECK_CHANGE_EMPTY;
import static org.lensward.finding.FindingCode.CHECK_CLOSED;
import static org.lensward.finding.FindingCode.CHECK_NONE_OPEN;
import static org.lensward.finding.FindingCode.CHECK_SURGEON_UNNAMED;

import ca.uhn.fhir.context.FhirContext;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.check.Attempt;
import org.lensward.check.CheckPolicy;
import org.lensward.check.CheckState;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.plan.Policy;
import org.lensward.record.CasePlanning;
import org.lensward.record.site.SiteCodes;

/**
 * The lens checks of the record. Every action takes what was just gathered about one booking and gives one transaction or a refusal; it
 * posts nothing itself. The plan is made again each time, so that nothing passes on a plan the record no longer supports.
 */
public final class LensChecks {

    private final CasePlanning planning;
    private final CheckPolicy policy;
    private final Clock clock;

    /**
     * By that policy and at that clock.
     *
     * @param policy as the plans are made
     * @param checks as lenses are checked
     */
    public LensChecks(FhirContext fhir, Policy policy, CheckPolicy checks, Clock clock) {
        this(new CasePlanning(fhir, policy, SiteCodes.none()), checks, clock);
    }

    /**
     * Of a hospital with codes of its own, too.
     *
     * @param planning as the plans are made
     * @param checks as lenses are checked
     */
    public LensChecks(CasePlanning planning, CheckPolicy checks, Clock clock) {
        this.planning = planning;
        this.policy = checks;
        this.clock = clock;
    }

    /** The check that stands for the booking, such as {@code ServiceRequest/b1}; empty if its plan is withheld or not made. */
    public Optional<StoredCheck> find(Bundle gathered, String booking) {
        return new GatheredCheck(gathered, booking).check();
    }

    /** A surgeon confirms the plan: only then can a lens be picked. */
    public CheckAnswer confirm(Bundle gathered, String booking, String surgeon) {
        return surgeon.isBlank()
                ? refused(gathered, booking, CHECK_SURGEON_UNNAMED)
                : with(gathered, booking, here -> new SurgeonsWord(here).confirm(surgeon.strip()));
    }

    /** A surgeon does not confirm the plan, or takes the confirmation back. */
    public CheckAnswer refuse(Bundle gathered, String booking, Decision decision) {
        return decision.isComplete()
                ? with(gathered, booking, here -> new SurgeonsWord(here).refuse(decision))
                : refused(gathered, booking, CHECK_SURGEON_UNNAMED);
    }

    /** After a stop or a refusal a surgeon chooses the planned lens again: a new check opens, confirmed. */
    public CheckAnswer chooseAgain(Bundle gathered, String booking, Decision decision) {
        return decision.isComplete()
                ? with(gathered, booking, here -> new SurgeonsWord(here).chooseAgain(decision))
                : refused(gathered, booking, CHECK_SURGEON_UNNAMED);
    }

    /** A surgeon wants another target or lens: the booking says so, and from it the adapter plans again and voids the old check. */
    public CheckAnswer change(Bundle gathered, String booking, Decision decision, LensChange change) {
        GatheredCheck known = new GatheredCheck(gathered, booking);
        if (!decision.isComplete()) {
            return refused(gathered, booking, CHECK_SURGEON_UNNAMED);
        }
        if (change.isEmpty()) {
            return refused(gathered, booking, CHECK_CHANGE_EMPTY);
        }
        if (known.begun()) {
            return refused(gathered, booking, CHECK_CLOSED, "of an operation that has begun");
        }
        CheckState state = known.check().map(each -> each.progress().state()).orElse(CheckState.AWAITING_CONFIRMATION);
        return new CheckAnswer.Write(
                new CheckTransaction(known.shelf(), now())
                        .of(
                                "Plan changed by the surgeon: " + decision.reason(),
                                List.of(decision.surgeon()),
                                new BookingChange(known.shelf(), known.request()).of(change)),
                state,
                List.of());
    }

    /** People present patient, eye and carton at a checkpoint. */
    public CheckAnswer present(Bundle gathered, String booking, Attempt attempt) {
        return with(gathered, booking, here -> new CheckpointPassage(here, attempt).answer(policy));
    }

    private CheckAnswer with(Bundle gathered, String booking, Function<Here, CheckAnswer> action) {
        GatheredCheck known = new GatheredCheck(gathered, booking);
        return known.check()
                .map(check -> action.apply(new Here(
                        known, check, known.standing(() -> planning.plan(gathered, LocalDate.now(clock))), now())))
                .orElseGet(() -> refused(gathered, booking, CHECK_NONE_OPEN));
    }

    private OffsetDateTime now() {
        return OffsetDateTime.now(clock);
    }

    private static CheckAnswer refused(Bundle gathered, String booking, FindingCode code, Object... particulars) {
        return new CheckAnswer.Refused(
                List.of(Finding.of(code, new GatheredCheck(gathered, booking).evidence(), particulars)));
    }
}
