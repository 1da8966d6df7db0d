package org.lensward.risk.opening;

import org.lensward.eye.Limit;
import org.lensward.quantity.Percent;
import org.lensward.quantity.Seconds;

/**
 * A dye as a hospital uses it.
 *
 * @param agent which dye
 * @param concentration weight per volume
 * @param contact how long it lies on the capsule
 * @param washOut how it is removed
 * @param coat how the cornea is protected before it; empty where the hospital asks for nothing
 */
public record DyePreparation(
        DyeAgent agent, Limit<Percent> concentration, Limit<Seconds> contact, String washOut, String coat) {

    /** As a label says it, such as {@code trypan blue 0.016 %}. */
    @Override
    public String toString() {
        return agent + " " + concentration.value();
    }
}
