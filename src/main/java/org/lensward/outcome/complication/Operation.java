package org.lensward.outcome.complication;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.outcome.Complication;
import org.lensward.outcome.OperatedEye;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * One operation of a series: what was expected, and whether it came about.
 *
 * @param on the day
 * @param surgeon key of the surgeon
 * @param expected chance of a ruptured capsule or vitreous loss as foretold; above 0 and below 1
 * @param oddsRatio product of the risk factors behind that chance, where the record has it
 * @param rupture whether it happened
 */
public record Operation(
        LocalDate on, String surgeon, Probability expected, Optional<PureNumber> oddsRatio, boolean rupture) {

    public Operation {
        if (expected.value() <= 0 || expected.value() >= 1) {
            throw new IllegalArgumentException("What is certain cannot be watched: " + expected);
        }
    }

    /** Nothing where the chance was not foretold or nobody told how the operation went. */
    public static Optional<Operation> of(OperatedEye eye) {
        if (!eye.after().complicationsTold()) {
            return Optional.empty();
        }
        boolean rupture = eye.after().complications().stream().anyMatch(Complication::isRupture);
        return eye.before()
                .rupture()
                .filter(chance -> chance.value() > 0 && chance.value() < 1)
                .map(chance -> new Operation(
                        eye.operatedOn(), eye.surgeon(), chance, eye.before().oddsRatio(), rupture));
    }
}
