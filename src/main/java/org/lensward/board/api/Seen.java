package org.lensward.board.api;

import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Procedure;
import org.lensward.record.PlanKey;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;
import org.lensward.record.check.LensChecks;
import org.lensward.record.check.StoredCheck;

/**
 * The plan and its lens check as somebody had them before their eyes when they decided. Of two people on one eye the second decides on what
 * is there no more, and is told so.
 *
 * @param text fingerprint of the plan and version of its check; empty where nobody says what was seen
 */
public record Seen(String text) {

    /** A caller that does not say. */
    public static Seen nothing() {
        return new Seen("");
    }

    /** What is there to be seen now. */
    public static Seen of(Bundle gathered, String booking, LensChecks checks) {
        String plan = new Shelf(gathered)
                .find(Procedure.class, PlanKey.of(booking).plan())
                .map(StoredPlan::fingerprint)
                .orElse("no plan");
        Optional<StoredCheck> check = checks.find(gathered, booking);
        return new Seen(
                plan + "|" + check.map(each -> Shelf.versionedName(each.task())).orElse("no check"));
    }

    /** Whether it is still so. */
    boolean stands(Seen now) {
        return text.isEmpty() || text.equals(now.text);
    }

    /** Whether it is another plan, and not only a step of the check, that is there now. */
    boolean ofAnotherPlan(Seen now) {
        return !text.split("\\|", 2)[0].equals(now.text.split("\\|", 2)[0]);
    }

    /** Names a plan by digits alone. */
    @Override
    public String toString() {
        return text;
    }
}
