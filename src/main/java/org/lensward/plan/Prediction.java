package org.lensward.plan;

import java.util.List;
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
 */
public record Prediction(
        FormulaView view,
        Dioptres powerForTarget,
        Dioptres predicted,
        boolean chosen,
        Uncertainty uncertainty,
        List<PowerRow> table) {

    public Prediction {
        table = List.copyOf(table);
    }
}
