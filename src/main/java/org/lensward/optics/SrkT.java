package org.lensward.optics;

import static org.lensward.finding.FindingCode.CORNEAL_HEIGHT_CUSP;

import java.util.List;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;

/**
 * SRK/T: Retzlaff, Sanders and Kraff, J Cataract Refract Surg 1990;16:333-340, erratum 1990;16:528.
 *
 * <pre>
 * LCOR = AL                                  for AL &lt;= 24.2
 *      = -3.446 + 1.716 AL - 0.0237 AL^2     above
 * Cw   = -5.41 + 0.58412 LCOR + 0.098 K      computed corneal width
 * H    = r - sqrt(r^2 - Cw^2 / 4)            corneal height
 * d    = H + 0.62467 A - 68.747 - 3.336      lens position
 * L    = AL + 0.65696 - 0.02029 AL           with retinal thickness
 * Kc   = 333 / r                             corneal index 1.333
 * </pre>
 *
 * AL axial length in mm; K keratometric power by 1.3375 in D; r = 337.5 / K in mm; A the A-constant. For steep long eyes r^2 &lt;
 * Cw^2 / 4: the root is held at nought and the cusp reported. LCOR steps by 0.0015 mm at 24.2. Not modelled: measured anterior chamber
 * depth, lens thickness.
 */
public record SrkT() implements Formula {

    @Override
    public FormulaName name() {
        return FormulaName.SRK_T;
    }

    @Override
    public Outcome<ThinEye> see(EyeShape shape, LensConstants constants, Evidence evidence) {
        double al = shape.axialLength().value();
        double r = shape.cornealRadius().value();
        double corrected = al <= 24.2 ? al : -3.446 + 1.716 * al - 0.0237 * al * al;
        double width =
                -5.41 + 0.58412 * corrected + 0.098 * shape.keratometricPower().value();
        double underRoot = r * r - width * width / 4;
        double height = r - Math.sqrt(Math.max(0, underRoot));
        Outcome<ThinEye> eye = place(name(), shape, height, constants, evidence);
        return underRoot >= 0 ? eye : eye.then(seen -> cusp(seen, evidence));
    }

    private static Outcome<ThinEye> cusp(ThinEye eye, Evidence evidence) {
        return Outcome.ready(eye, List.of(Finding.of(CORNEAL_HEIGHT_CUSP, evidence)));
    }

    /** The part that SRK/T and T2 share: everything after the corneal height. */
    static Outcome<ThinEye> place(
            FormulaName formula, EyeShape shape, double height, LensConstants constants, Evidence evidence) {
        double a = constants.aConstant().orElseThrow().value().value();
        double al = shape.axialLength().value();
        double lensPosition = height + 0.62467 * a - 68.747 - 3.336;
        double opticalLength = al + 0.65696 - 0.02029 * al;
        double cornealPower = 333 / shape.cornealRadius().value();
        return Placement.place(formula, shape, lensPosition, opticalLength, cornealPower, evidence);
    }
}
