package org.lensward.risk.opening;

import org.lensward.eye.Limit;
import org.lensward.quantity.Percent;
import org.lensward.quantity.PureNumber;

/**
 * The concentrations of an agent that need no protocol of their own, in weight per volume.
 *
 * @param least below it the agent may not stain
 * @param usual what others are compared with
 * @param most above it the agent is unusual
 */
public record DyeRange(Limit<Percent> least, Limit<Percent> usual, Limit<Percent> most) {

    public DyeRange {
        if (usual.value().value() <= 0) {
            throw new IllegalArgumentException("Nothing compares with a usual concentration of " + usual.value());
        }
    }

    /** Whether that concentration needs no protocol. */
    public boolean includes(Percent concentration) {
        return concentration.compareTo(least.value()) >= 0 && concentration.compareTo(most.value()) <= 0;
    }

    /** How many times the usual concentration that is. */
    public PureNumber timesUsual(Percent concentration) {
        return PureNumber.of(concentration.value() / usual.value().value());
    }
}
