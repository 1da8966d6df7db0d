package org.lensward.risk.opening;

import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Percent;

/**
 * How wide the capsule is to be opened.
 *
 * @param asMade how it lies over the optic when made, at the decentration to be expected of the technique
 * @param healed diameter to be expected once it has contracted
 * @param areaLost share of its area that it is expected to lose
 * @param capped whether the overlap kept it from being made as wide as the contraction asks for
 */
public record OpeningSize(Overlap asMade, Millimetres healed, Percent areaLost, boolean capped) {

    /** The diameter to make. */
    public Millimetres diameter() {
        return asMade.opening();
    }
}
