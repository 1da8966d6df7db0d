package org.lensward.lens;

import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.optics.ThinEye;

/**
 * How one formula sees one eye with one lens model in it.
 *
 * @param formula which
 * @param eye the thin eye
 * @param constants the model's constants that went in
 */
public record FormulaView(FormulaName formula, ThinEye eye, LensConstants constants) {

    /** Whether the formula's constant was converted from another formula's. */
    public boolean constantConverted() {
        return constants.convertedFor(formula);
    }
}
