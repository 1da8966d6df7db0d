package org.lensward.lens;

import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * How one method sees one eye with one lens model in it.
 *
 * @param method which
 * @param eye the thin eye
 * @param constants the model's constants that went in
 * @param oil how much more power the lens needs because oil stays behind it; nought without oil
 */
public record FormulaView(PlanningMethod method, ThinEye eye, LensConstants constants, Dioptres oil) {

    /** The formula the method rests on. */
    public FormulaName formula() {
        return method.name();
    }

    /** The labelled power that would leave this refraction, unrounded. */
    public Dioptres power(Dioptres refraction) {
        return eye.power(refraction).plus(oil);
    }

    /** The refraction that a lens of this label leaves, at the spectacle plane. */
    public Dioptres refraction(Dioptres label) {
        return eye.refraction(label.minus(oil));
    }

    /** The same with the lens moved; further back if positive. */
    public FormulaView withLensMoved(Millimetres back) {
        return new FormulaView(method, eye.withLensMoved(back), constants, oil);
    }

    /** Whether the formula's constant was converted from another formula's. */
    public boolean constantConverted() {
        return constants.convertedFor(formula());
    }
}
