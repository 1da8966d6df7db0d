package org.lensward.risk.opening;

import java.util.Optional;
import org.lensward.quantity.Millimetres;
import org.lensward.risk.opening.ImplantAdvice.EnlargeFirst;

/**
 * How far an opening may be widened on the side where capsule is left over, which is the side of the lens's axis. The edge on the other
 * side stays where it is, so the narrowest rim stays as it is until the opening is centred:
 *
 * <pre>
 * widened from d to D, the centre moves from e to e - (D - d) / 2, and no further than 0
 * </pre>
 *
 * @param overlap how the opening lies now
 * @param leastOverlap capsule over the optic's edge that is to remain
 */
record Widening(Overlap overlap, Millimetres leastOverlap) {

    /** Far below what any instrument resolves, in millimetres. */
    private static final double SAME = 1e-6;

    /** To that diameter at least; nothing where the cover does not leave so much room. */
    Optional<EnlargeFirst> to(Millimetres diameter) {
        Millimetres most = overlap.optic().minus(leastOverlap).minus(leastOverlap);
        boolean covered = overlap.least().value() >= leastOverlap.value() - SAME;
        return covered && diameter.value() <= most.value() + SAME
                ? Optional.of(new EnlargeFirst(diameter, most))
                : Optional.empty();
    }

    /** Until the centre lies no further off than that. */
    Optional<EnlargeFirst> centreWithin(Millimetres limit) {
        Millimetres shift = overlap.decentration().minus(limit);
        return to(overlap.opening().plus(shift).plus(shift));
    }
}
