package org.lensward.optics;

import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Dioptres;

/**
 * A formula for a cornea after laser that knows both powers: Aramberri, J Cataract Refract Surg 2003;29:2063-2068. The lens is placed
 * by the cornea as it was before the laser, and its power computed with the cornea as it is now. Aramberri described SRK/T; the same
 * step serves T2, Holladay 1 and Hoffer Q, whose lens positions also depend on K. Haigis' does not, so double-K changes nothing in it
 * but the corneal power.
 *
 * @param formula the formula as published
 * @param before keratometric power before the laser, index 1.3375
 * @param now true power after the laser on the same scale, such as {@link CornealHistory#powerNow()}; not the measured keratometry
 */
public record DoubleK(Formula formula, Dioptres before, Dioptres now) implements Formula {

    @Override
    public FormulaName name() {
        return formula.name();
    }

    @Override
    public Outcome<ThinEye> see(EyeShape shape, LensConstants constants, Evidence evidence) {
        return formula.see(shape.withKeratometricPower(before), constants, evidence)
                .then(placed -> formula.see(shape.withKeratometricPower(now), constants, evidence)
                        .then(seen -> Outcome.ready(
                                new ThinEye(placed.lensPosition(), seen.opticalLength(), seen.cornealPower()))));
    }
}
