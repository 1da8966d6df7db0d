package org.lensward.outcome.complication;

import org.lensward.outcome.Interval;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * Ruptures against what was expected of these very operations.
 *
 * @param operations counted
 * @param observed ruptures
 * @param expected sum of the chances
 * @param variance of the count if the chances hold: sum of p (1 - p)
 * @param ratio observed by expected
 * @param interval of the ratio
 * @param adjusted the ratio times the standard rate: what this unit's rate would be with average eyes; 1 at most
 */
public record ObservedExpected(
        long operations,
        long observed,
        PureNumber expected,
        PureNumber variance,
        PureNumber ratio,
        Interval<PureNumber> interval,
        Probability adjusted) {}
