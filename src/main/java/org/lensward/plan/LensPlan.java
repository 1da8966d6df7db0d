package org.lensward.plan;

import java.util.List;
import java.util.Optional;
import org.lensward.eye.Biometry;
import org.lensward.lens.LensKit;
import org.lensward.quantity.Dioptres;

/**
 * The lenses proposed and what they are predicted to do.
 *
 * @param target spherical equivalent aimed at, at the spectacle plane
 * @param biometry what it was computed from
 * @param kit primary, spare and fall-backs
 * @param predictions one for each method that sees this eye
 * @param toric the cylinder and its axis, for a toric model
 */
public record LensPlan(
        Dioptres target, Biometry biometry, LensKit kit, List<Prediction> predictions, Optional<ToricPlan> toric) {

    public LensPlan {
        predictions = List.copyOf(predictions);
    }

    /** The prediction the lens was chosen by. */
    public Prediction chosen() {
        return predictions.stream().filter(Prediction::chosen).findFirst().orElseThrow();
    }
}
