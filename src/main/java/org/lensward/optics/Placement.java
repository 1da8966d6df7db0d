package org.lensward.optics;

import static org.lensward.finding.FindingCode.FORMULA_BEYOND_CHECKED_RANGE;
import static org.lensward.finding.FindingCode.NO_LENS_POSITION;

import java.util.List;
import java.util.Locale;
import org.lensward.eye.Keratometry;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/** Where a formula put the lens, made into a thin eye or refused; the steps all formulas share. */
final class Placement {

    /** The range over which our formulas are checked against an independent ray transfer; no source beyond that. */
    private static final double SHORTEST = 20;

    private static final double LONGEST = 32;
    private static final double FLATTEST = 38;
    private static final double STEEPEST = 49;

    /** Far below what any instrument resolves: an edge that was computed is still the edge. */
    private static final double SAME = 1e-6;

    private Placement() {}

    static Outcome<ThinEye> place(
            FormulaName formula,
            EyeShape shape,
            double lensPosition,
            double opticalLength,
            double cornealPower,
            Evidence evidence) {
        if (!(lensPosition > 0 && lensPosition < opticalLength)) {
            return Outcome.withheld(Finding.of(
                    NO_LENS_POSITION, evidence, formula, String.format(Locale.ROOT, "%.2f mm", lensPosition)));
        }
        ThinEye eye =
                new ThinEye(Millimetres.of(lensPosition), Millimetres.of(opticalLength), Dioptres.of(cornealPower));
        double length = shape.axialLength().value();
        double power = Keratometry.power(shape.cornealRadius()).value();
        if (within(length, SHORTEST, LONGEST) && within(power, FLATTEST, STEEPEST)) {
            return Outcome.ready(eye);
        }
        String where = String.format(Locale.ROOT, "axial length %.2f mm, corneal power %.2f D", length, power);
        return Outcome.ready(eye, List.of(Finding.of(FORMULA_BEYOND_CHECKED_RANGE, evidence, formula, where)));
    }

    private static boolean within(double value, double least, double most) {
        return value > least - SAME && value < most + SAME;
    }
}
