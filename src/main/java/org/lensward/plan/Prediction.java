package org.lensward.plan;

import java.util.List;
import java.util.Optional;
import org.lensward.lens.FormulaView;
import org.lensward.quantity.Dioptres;

/**
 * What one method says of the primary lens.
 *
 * @param view how it sees the eye
 * @param powerForTarget the unrounded power that would meet the target exactly
 * @param predicted the spherical equivalent that the chosen labelled power leaves, at the spectacle plane
 * @param chosen whether the lens was chosen by this method
 * @param uncertainty how sure it is
 * @param table labelled powers around the choice, ascending
 * @param thickEye where rays traced through a thick cornea and a thick lens at this method's lens position end: an explanation, not a
 *     prediction; absent where the cornea was reshaped or oil stays
 */
public record Prediction(
        FormulaView view,
        Dioptres powerForTarget,
        Dioptres predicted,
        boolean chosen,
        Uncertainty uncertainty,
        List<PowerRow> table,
        Optional<Dioptres> thickEye) {

    public Prediction {
        table = List.copyOf(table);
    }
}
