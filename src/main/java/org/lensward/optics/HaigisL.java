package org.lensward.optics;

import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Dioptres;

/**
 * Haigis-L for corneas flattened by laser, without history: Haigis, J Cataract Refract Surg 2008;34:1658-1663.
 *
 * <pre>
 * Kc = 331.5 / r'  = -5.1625 r + 82.2603 - 0.35
 * d, L  as in {@link Haigis}
 * </pre>
 *
 * r measured mean radius in mm, r' the corrected one, Kc in D. Coefficients as quoted by secondary sources; the paper was not seen.
 * Made for optical biometry after myopic laser only. Not modelled: corneal asphericity, radial keratotomy.
 */
public record HaigisL() implements Formula {

    @Override
    public FormulaName name() {
        return FormulaName.HAIGIS_L;
    }

    @Override
    public Outcome<ThinEye> see(EyeShape shape, LensConstants constants, Evidence evidence) {
        double cornealPower = -5.1625 * shape.cornealRadius().value() + 82.2603 - 0.35;
        return Haigis.see(name(), shape, Dioptres.of(cornealPower), constants, evidence);
    }
}
