package org.lensward.optics;

import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;

/**
 * Hoffer Q: Hoffer, J Cataract Refract Surg 1993;19:700-712; errata 1994;20:677 and 2007;33:2-3.
 *
 * <pre>
 * A  = AL held within 18.5 to 31
 * M  = +1, G = 28      for A &lt;= 23
 * M  = -1, G = 23.5    above
 * d  = pACD + 0.3 (A - 23.5) + tan^2 K + 0.1 M (23.5 - A)^2 tan(0.1 (G - A)^2) - 0.99166 + 0.05
 * L  = AL,  Kc = K
 * </pre>
 *
 * AL axial length in mm, K keratometric power by 1.3375 in D and, inside the tangents, read as degrees; pACD in mm. The 0.05 mm moves
 * the ACD to the principal plane of the lens. d steps at 23.0 mm. Some restatements also hold the ACD within 2.5 to 6.5 mm; the 1993
 * paper as we know it does not, and neither do we. Not modelled: measured anterior chamber depth.
 */
public record HofferQ() implements Formula {

    @Override
    public FormulaName name() {
        return FormulaName.HOFFER_Q;
    }

    @Override
    public Outcome<ThinEye> see(EyeShape shape, LensConstants constants, Evidence evidence) {
        double pAcd = constants.personalisedAcd().orElseThrow().value().value();
        double al = shape.axialLength().value();
        double k = shape.keratometricPower().value();
        double lensPosition = chamberDepth(pAcd, al, k) + 0.05;
        return Placement.place(name(), shape, lensPosition, al, k, evidence);
    }

    private static double chamberDepth(double pAcd, double al, double k) {
        double a = Math.min(Math.max(al, 18.5), 31);
        double m = a <= 23 ? 1 : -1;
        double g = a <= 23 ? 28 : 23.5;
        double tanK = Math.tan(Math.toRadians(k));
        double bend = Math.tan(Math.toRadians(0.1 * (g - a) * (g - a)));
        return pAcd + 0.3 * (a - 23.5) + tanK * tanK + 0.1 * m * (23.5 - a) * (23.5 - a) * bend - 0.99166;
    }
}
