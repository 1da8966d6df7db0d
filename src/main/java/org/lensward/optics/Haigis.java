package org.lensward.optics;

import static org.lensward.finding.FindingCode.ANTERIOR_CHAMBER_DEPTH_MISSING;

import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;

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
public final class Haigis implements Formula {

    @Override
    public FormulaName name() {
        return FormulaName.HAIGIS;
    }

    @Override
    public Outcome<ThinEye> see(EyeShape shape, LensConstants constants, Evidence evidence) {
        if (shape.anteriorChamberDepth().isEmpty()) {
            return Outcome.withheld(Finding.of(ANTERIOR_CHAMBER_DEPTH_MISSING, evidence, name()));
        }
        HaigisConstants haigis = constants.haigis().orElseThrow().value();
        double al = shape.axialLength().value();
        double acd = shape.anteriorChamberDepth().get().value();
        double lensPosition =
                haigis.a0().value() + haigis.a1().value() * acd + haigis.a2().value() * al;
        double cornealPower = 331.5 / shape.cornealRadius().value();
        return Placement.place(name(), shape, lensPosition, al, cornealPower, evidence);
    }
}
