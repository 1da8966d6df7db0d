package org.lensward.outcome;

import org.lensward.quantity.Probability;
import org.lensward.quantity.Quantity;

/**
 * Where a figure may lie.
 *
 * @param low its lower end
 * @param high its upper end, not below the lower
 * @param confidence how often such intervals hold the truth, such as 0.95
 */
public record Interval<Q extends Quantity>(Q low, Q high, Probability confidence) {

    public Interval {
        if (low.value() > high.value()) {
            throw new IllegalArgumentException("An interval from " + low + " up to " + high);
        }
    }

    public boolean holds(Q value) {
        return low.value() <= value.value() && value.value() <= high.value();
    }
}
