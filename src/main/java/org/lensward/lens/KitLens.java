package org.lensward.lens;

import org.lensward.quantity.Dioptres;

/**
 * One lens of the kit.
 *
 * @param role what it is for
 * @param model which model
 * @param power the labelled power
 * @param predicted the spherical equivalent it is predicted to leave, at the spectacle plane
 * @param method by which it was chosen
 */
public record KitLens(KitRole role, LensModel model, Dioptres power, Dioptres predicted, PlanningMethod method) {

    /** The same lens in another role. */
    KitLens as(KitRole other) {
        return new KitLens(other, model, power, predicted, method);
    }
}
