package org.lensward.plan;

import org.lensward.lens.FormulaView;
import org.lensward.quantity.Dioptres;

/**
 * What one formula says of the primary lens.
 *
 * @param view how the formula sees the eye
 * @param powerForTarget the unrounded power that would meet the target exactly
 * @param predicted the spherical equivalent that the chosen labelled power leaves, at the spectacle plane
 * @param chosen whether the lens was chosen by this formula
 */
public record Prediction(FormulaView view, Dioptres powerForTarget, Dioptres predicted, boolean chosen) {}
