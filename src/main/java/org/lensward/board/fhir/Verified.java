package org.lensward.board.fhir;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.check.CheckState;
import org.lensward.finding.Finding;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.bank.ImplantCard;
import org.lensward.record.check.CheckAnswer;

/**
 * How a step of a lens check went.
 *
 * @param verdict in a word
 * @param state where the check stands now, if there is one
 * @param differences each reason why it does not go on as asked
 * @param transaction what was written, or would be; none where there is nothing to write
 * @param carton the carton, as the bank has it now
 * @param card the patient's implant card, at sign-out
 */
record Verified(
        Verdict verdict,
        Optional<CheckState> state,
        List<Finding> differences,
        Optional<Bundle> transaction,
        Optional<LensUnit> carton,
        Optional<ImplantCard> card) {

    /** Whether the lens may go on. */
    enum Verdict {
        /** Everything agrees. */
        PASSED,
        /** Something differs, and the check says so: it goes on only as its state allows. */
        STOPPED,
        /** Not now and not so; the check is as it was. */
        REFUSED;

        String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** The check was not touched. */
    static Verified refused(List<Finding> differences) {
        return new Verified(
                Verdict.REFUSED, Optional.empty(), differences, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** What the check answered; the carton was not moved. */
    static Verified of(CheckAnswer answer) {
        if (answer instanceof CheckAnswer.Refused refused) {
            return refused(refused.findings());
        }
        Optional<Bundle> transaction =
                answer instanceof CheckAnswer.Write write ? Optional.of(write.transaction()) : Optional.empty();
        CheckState state =
                answer instanceof CheckAnswer.Write write ? write.state() : ((CheckAnswer.Unchanged) answer).state();
        return new Verified(
                answer.findings().isEmpty() ? Verdict.PASSED : Verdict.STOPPED,
                Optional.of(state),
                answer.findings(),
                transaction,
                Optional.empty(),
                Optional.empty());
    }

    /** Then the carton was moved, or could not be. */
    Verified and(List<Finding> more, Optional<LensUnit> unit, Optional<ImplantCard> given) {
        return new Verified(verdict, state, more, transaction, unit, given);
    }

    /** Names no patient. */
    @Override
    public String toString() {
        return "Verified " + verdict.code();
    }
}
