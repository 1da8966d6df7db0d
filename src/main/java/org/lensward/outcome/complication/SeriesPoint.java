package org.lensward.outcome.complication;

import java.time.LocalDate;
import org.lensward.quantity.PureNumber;

/**
 * A series after one operation.
 *
 * @param number of the operation, from 1
 * @param on its day
 * @param saved VLAD: sum of expected minus observed so far; rising is better than expected
 * @param worse cumulative sum for odds doubled; never below nought
 * @param better cumulative sum for odds halved; never above nought
 * @param signal whether a limit was reached here; that arm starts again from nought afterwards
 */
public record SeriesPoint(
        long number, LocalDate on, PureNumber saved, PureNumber worse, PureNumber better, Signal signal) {

    /** What a limit reached says. */
    public enum Signal {
        NONE,
        WORSE,
        BETTER
    }
}
