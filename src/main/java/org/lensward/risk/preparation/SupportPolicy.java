package org.lensward.risk.preparation;

import java.util.Set;
import org.lensward.eye.Limit;
import org.lensward.eye.Sign;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * How a weakly held lens is supported and its nucleus taken apart.
 *
 * @param weak signs that the zonules are weak
 * @param suspect signs that they may be
 * @param progressive signs that they will weaken further, so that support is sutured
 * @param ringHours clock hours of loss up to which a plain ring holds the bag; beyond, a sutured device
 * @param loopDiameter to which a nucleus loop opens inside the capsule
 * @param loopOpening a capsule opening narrower than this lets no loop pass safely
 * @param source where the lists of signs come from
 */
public record SupportPolicy(
        Set<Sign> weak,
        Set<Sign> suspect,
        Set<Sign> progressive,
        Limit<PureNumber> ringHours,
        Limit<Millimetres> loopDiameter,
        Limit<Millimetres> loopOpening,
        String source) {

    public SupportPolicy {
        weak = Set.copyOf(weak);
        suspect = Set.copyOf(suspect);
        progressive = Set.copyOf(progressive);
    }
}
