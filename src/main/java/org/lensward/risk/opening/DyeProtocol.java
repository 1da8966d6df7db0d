package org.lensward.risk.opening;

import org.lensward.eye.Limit;
import org.lensward.quantity.Percent;

/**
 * A hospital's own written permission to use an agent outside the usual range.
 *
 * @param name by which the hospital knows the protocol
 * @param agent the dye it covers
 * @param least concentration it covers, weight per volume
 * @param most concentration it covers
 */
public record DyeProtocol(String name, DyeAgent agent, Limit<Percent> least, Limit<Percent> most) {

    public DyeProtocol {
        if (name.isBlank()) {
            throw new IllegalArgumentException("A local protocol has a name");
        }
    }

    boolean covers(DyePreparation preparation) {
        Percent concentration = preparation.concentration().value();
        return preparation.agent() == agent
                && concentration.compareTo(least.value()) >= 0
                && concentration.compareTo(most.value()) <= 0;
    }
}
