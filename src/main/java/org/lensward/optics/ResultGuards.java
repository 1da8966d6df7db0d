package org.lensward.optics;

import static org.lensward.finding.FindingCode.EYES_WILL_DIFFER;
import static org.lensward.finding.FindingCode.RESULT_BEYOND_TARGET;

import java.util.Optional;
import org.lensward.eye.Limit;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.quantity.Dioptres;

/** Whether a predicted refraction should be looked at again before its lens is chosen. */
public final class ResultGuards {

    private ResultGuards() {}

    /**
     * The lens is predicted to leave the eye further from its target than the limit: a hyperopic surprise, or a sign typed wrong.
     *
     * @param predicted spherical equivalent the chosen lens leaves
     * @param target with where the record states it
     */
    public static Optional<Finding> beyondTarget(Dioptres predicted, Measured<Dioptres> target, Limit<Dioptres> most) {
        if (predicted.distanceTo(target.value()).compareTo(most.value()) <= 0) {
            return Optional.empty();
        }
        return Optional.of(Finding.of(
                RESULT_BEYOND_TARGET,
                target.evidence(),
                predicted.signed(),
                target.value().signed()));
    }

    /**
     * The two eyes will end further apart than the limit.
     *
     * @param fellow spherical equivalent of the other eye, with where the record states it
     */
    public static Optional<Finding> anisometropia(Dioptres predicted, Measured<Dioptres> fellow, Limit<Dioptres> most) {
        Dioptres apart = predicted.distanceTo(fellow.value());
        if (apart.compareTo(most.value()) <= 0) {
            return Optional.empty();
        }
        return Optional.of(Finding.of(
                EYES_WILL_DIFFER,
                fellow.evidence(),
                apart.rounded(),
                most.value().rounded()));
    }
}
