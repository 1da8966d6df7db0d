package org.lensward.optics;

import static org.lensward.finding.FindingCode.ANTERIOR_CHAMBER_DEPTH_MISSING;

import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Dioptres;

/**
 * Haigis: Haigis, Lege, Miller and Schneider, Graefe's Arch Clin Exp Ophthalmol 2000;238:765-773.
 *
 * <pre>
 * d  = a0 + a1 ACD + a2 AL
 * L  = AL,  Kc = 331.5 / r      corneal index 1.3315
 * </pre>
 *
 * AL axial length in mm; ACD anterior chamber depth in mm <em>from the epithelium</em>; r mean corneal radius in mm; a0 in mm, a1 and
 * a2 of unit one. Without a measured ACD the formula has no answer. Not modelled: lens thickness.
 */
public record Haigis() implements Formula {

    @Override
    public FormulaName name() {
        return FormulaName.HAIGIS;
    }

    @Override
    public Outcome<ThinEye> see(EyeShape shape, LensConstants constants, Evidence evidence) {
        double cornealPower = 331.5 / shape.cornealRadius().value();
        return see(name(), shape, Dioptres.of(cornealPower), constants, evidence);
    }

    /** The part that Haigis and Haigis-L share: everything but the corneal power. */
    static Outcome<ThinEye> see(
            FormulaName formula, EyeShape shape, Dioptres cornealPower, LensConstants constants, Evidence evidence) {
        if (shape.anteriorChamberDepth().isEmpty()) {
            return Outcome.withheld(Finding.of(ANTERIOR_CHAMBER_DEPTH_MISSING, evidence, formula));
        }
        HaigisConstants haigis = constants.haigis().orElseThrow().value();
        double al = shape.axialLength().value();
        double acd = shape.anteriorChamberDepth().get().value();
        double lensPosition =
                haigis.a0().value() + haigis.a1().value() * acd + haigis.a2().value() * al;
        return Placement.place(formula, shape, lensPosition, al, cornealPower.value(), evidence);
    }
}
