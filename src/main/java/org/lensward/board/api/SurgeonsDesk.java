package org.lensward.board.api;

import java.util.function.BiFunction;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.board.api.PlansApi.Standing;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.Decision;
import org.lensward.record.check.LensChange;
import org.lensward.record.check.LensChecks;

/**
 * The surgeon's word on a plan, from a page or a call alike. Whoever says what they had seen is refused with {@link Overtaken} where it is
 * no longer so; a refusal for named reasons is a {@link Refusal}.
 */
public final class SurgeonsDesk {

    private final Bookings bookings;

    public SurgeonsDesk(Bookings bookings) {
        this.bookings = bookings;
    }

    /** The plan is confirmed: only then can a lens be picked. */
    public Standing confirm(String booking, Seen seen, String surgeon) {
        return act(booking, seen, (checks, now) -> checks.confirm(now, booking, surgeon));
    }

    /** The plan is not confirmed, or the confirmation is taken back. */
    public Standing refuse(String booking, Seen seen, Decision decision) {
        return act(booking, seen, (checks, now) -> checks.refuse(now, booking, decision));
    }

    /** After a stop, the planned lens again. */
    public Standing chooseAgain(String booking, Seen seen, Decision decision) {
        return act(booking, seen, (checks, now) -> checks.chooseAgain(now, booking, decision));
    }

    /** Another target or lens: the eye is planned again. */
    public Standing change(String booking, Seen seen, Decision decision, LensChange change) {
        return act(booking, seen, (checks, now) -> checks.change(now, booking, decision, change));
    }

    private Standing act(String booking, Seen seen, BiFunction<LensChecks, Bundle, CheckAnswer> action) {
        return PlansApi.standing(bookings.act(booking, (checks, gathered) -> {
            Seen now = Seen.of(gathered, booking, checks);
            if (!seen.stands(now)) {
                throw new Overtaken(seen.ofAnotherPlan(now));
            }
            return action.apply(checks, gathered);
        }));
    }
}
