package org.lensward.optics;

import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;

/**
 * T2: Sheard, Smith and Cooke, J Cataract Refract Surg 2010;36:1829-1834. SRK/T with its corneal height replaced by a regression,
 * which has no cusp:
 *
 * <pre>
 * H = -10.326 + 0.32630 AL + 0.13533 K
 * </pre>
 *
 * AL axial length in mm, K keratometric power by 1.3375 in D, H in mm; everything else and the A-constant as in {@link SrkT}. Not
 * modelled: measured anterior chamber depth, lens thickness.
 */
public record T2() implements Formula {

    @Override
    public FormulaName name() {
        return FormulaName.T2;
    }

    @Override
    public Outcome<ThinEye> see(EyeShape shape, LensConstants constants, Evidence evidence) {
        double height = -10.326
                + 0.32630 * shape.axialLength().value()
                + 0.13533 * shape.keratometricPower().value();
        return SrkT.place(name(), shape, height, constants, evidence);
    }
}
