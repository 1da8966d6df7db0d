package org.lensward.board.check;

import java.util.List;
import java.util.Optional;
import org.lensward.board.api.ChecksApi.Passed;
import org.lensward.board.api.Refusal;
import org.lensward.check.CheckState;
import org.lensward.check.Checkpoint;
import org.lensward.check.Difference;
import org.lensward.finding.Finding;
import org.lensward.record.bank.ImplantCard;

/**
 * How a step went, as it fills the page.
 *
 * @param kind passed, stopped, again (nothing written), moved-not (check written, carton not moved) or renewed
 * @param word the one word that is seen from across the room
 * @param what happened
 * @param next what to do
 * @param differences with both values, after a stop
 * @param reasons in words, where there are no two values
 * @param card the implant card, after sign-out
 */
record CheckOutcome(
        String kind,
        String word,
        String what,
        String next,
        List<Difference> differences,
        List<Reason> reasons,
        Optional<ImplantCard> card) {

    /** A reason and its remedy. */
    record Reason(String message, String remedy) {

        static Reason of(Finding finding) {
            return new Reason(finding.message(), finding.remedy());
        }
    }

    static CheckOutcome of(Checkpoint at, Passed passed) {
        Optional<Checkpoint> next = CheckState.of(passed.check()).flatMap(CheckState::next);
        return new CheckOutcome(
                "passed",
                "PASSED",
                CheckView.words(at) + " passed. Everything is as planned.",
                next.map(each -> "Next is " + CheckView.occasion(each).replace(":", ",") + ".")
                        .orElse("The lens check is complete."),
                List.of(),
                List.of(),
                passed.card());
    }

    /** Another lens than the planned one is in the eye, and the record says so. */
    static CheckOutcome instead(ImplantCard card) {
        return new CheckOutcome(
                "passed",
                "RECORDED",
                "The lens that went in is recorded, with who decided and why.",
                "The planned lens was not passed by this; its check stays as it stands.",
                List.of(),
                List.of(),
                Optional.of(card));
    }

    static CheckOutcome of(Refusal refusal) {
        List<Reason> reasons =
                refusal.findings().stream().map(Reason::of).distinct().toList();
        return switch (refusal.type()) {
            case Refusal.STOPPED ->
                new CheckOutcome(
                        "stopped",
                        "STOP",
                        "This is not as planned. The lens check has stopped.",
                        "Do not open the carton. Tell the surgeon now: only the surgeon's new choice opens another check.",
                        refusal.differences(),
                        reasons,
                        Optional.empty());
            case "lens-check-renewed" ->
                new CheckOutcome(
                        "renewed",
                        "BEGIN AGAIN",
                        "The operating list has changed, so what was verified counts no more.",
                        "Nothing was wrong with the lens. A new check is open: begin at the pick.",
                        List.of(),
                        reasons,
                        Optional.empty());
            case "carton-not-moved" ->
                new CheckOutcome(
                        "moved-not",
                        "CHECK WRITTEN",
                        "The lens check was written, but the bank did not move the carton.",
                        "Mend what is named here, then send the same answers again: the check stays, the carton is moved.",
                        List.of(),
                        reasons,
                        Optional.empty());
            default ->
                new CheckOutcome(
                        "again",
                        "NOT YET",
                        "Nothing was written.",
                        "Put right what is named here, then answer again.",
                        List.of(),
                        reasons,
                        Optional.empty());
        };
    }

    @Override
    public String toString() {
        return "CheckOutcome[" + kind + "]";
    }
}
