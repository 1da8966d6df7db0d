package org.lensward.plan;

import java.util.List;
import org.lensward.eye.Biometry;
import org.lensward.lens.LensKit;
import org.lensward.quantity.Dioptres;

/**
 * The lenses proposed and what they are predicted to do.
 *
 * @param target spherical equivalent aimed at, at the spectacle plane
 * @param biometry what it was computed from
 * @param kit primary, spare and fall-backs
 * @param predictions one for each formula that sees this eye
 */
public record LensPlan(Dioptres target, Biometry biometry, LensKit kit, List<Prediction> predictions) {

    public LensPlan {
        predictions = List.copyOf(predictions);
    }

    /** The prediction the lens was chosen by. */
    public Prediction chosen() {
        return predictions.stream().filter(Prediction::chosen).findFirst().orElseThrow();
    }
}
