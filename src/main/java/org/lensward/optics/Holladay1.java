package org.lensward.optics;

import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;

/**
 * Holladay 1: Holladay, Prager, Chandler, Musgrove, Lewis and Ruiz, J Cataract Refract Surg 1988;14:17-24.
 *
 * <pre>
 * Rag = max(r, 7)
 * AG  = min(12.5 AL / 23.45, 13.5)                anterior segment diameter
 * d   = 0.56 + Rag - sqrt(Rag^2 - AG^2 / 4) + SF
 * L   = AL + 0.2                                  retinal thickness
 * Kc  = (1000 / 3) / r                            corneal index 4/3
 * </pre>
 *
 * AL axial length in mm, r mean corneal radius in mm, SF surgeon factor in mm. AG is capped from an axial length of 25.33 mm. The
 * root is real for every eye: Rag is at least 7 and AG / 2 at most 6.75. Not modelled: measured anterior chamber depth.
 */
public record Holladay1() implements Formula {

    @Override
    public FormulaName name() {
        return FormulaName.HOLLADAY_1;
    }

    @Override
    public Outcome<ThinEye> see(EyeShape shape, LensConstants constants, Evidence evidence) {
        double al = shape.axialLength().value();
        double r = shape.cornealRadius().value();
        double radius = Math.max(r, 7);
        double diameter = Math.min(12.5 * al / 23.45, 13.5);
        double surgeonFactor = constants.surgeonFactor().orElseThrow().value().value();
        double lensPosition = 0.56 + radius - Math.sqrt(radius * radius - diameter * diameter / 4) + surgeonFactor;
        return Placement.place(name(), shape, lensPosition, al + 0.2, 1000.0 / 3 / r, evidence);
    }
}
