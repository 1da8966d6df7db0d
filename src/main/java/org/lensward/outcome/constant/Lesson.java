package org.lensward.outcome.constant;

import java.util.Map;
import java.util.OptionalDouble;
import org.lensward.optics.FormulaName;
import org.lensward.optics.ThinEye;
import org.lensward.outcome.Admitted.Counted;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * What one eye teaches, computed once for every scope it belongs to.
 *
 * @param errors of each formula at the nodes; empty where it does not see the eye
 * @param haigis 1, ACD, AL and the position that explains the refraction; empty where there is none
 * @param slope how the refraction answers to the position, D/mm
 */
record Lesson(double[][] errors, double[] haigis, double slope) {

    private static final double[] NONE = {};

    /** Half a step of the slope's difference quotient, in mm. */
    private static final double STEP = 0.01;

    /** From the eye as the formulas see it with the constants in use. */
    static Lesson of(Counted eye, Map<FormulaName, ThinEye> seen) {
        double[][] errors = new double[ScopeTally.FORMULAS.size()][];
        for (int each = 0; each < errors.length; each++) {
            ThinEye thin = seen.get(ScopeTally.FORMULAS.get(each));
            errors[each] = thin == null || !movable(thin) ? NONE : errors(eye, thin);
        }
        ThinEye haigis = seen.get(FormulaName.HAIGIS);
        return haigis == null ? new Lesson(errors, NONE, 0) : explained(eye, haigis, errors);
    }

    private static boolean movable(ThinEye eye) {
        double position = eye.lensPosition().value();
        double reach = PositionNodes.REACH;
        return position > reach && position + reach < eye.opticalLength().value();
    }

    private static double[] errors(Counted eye, ThinEye thin) {
        double[] errors = new double[PositionNodes.COUNT];
        for (int node = 0; node < errors.length; node++) {
            errors[node] = eye.refraction().equivalent().value() - moved(eye, thin, PositionNodes.node(node));
        }
        return errors;
    }

    private static double moved(Counted eye, ThinEye thin, double by) {
        Dioptres power = eye.eye().lens().power();
        return thin.withLensMoved(Millimetres.of(by)).refraction(power).value();
    }

    private static Lesson explained(Counted eye, ThinEye thin, double[][] errors) {
        OptionalDouble position = LensPositions.explaining(
                thin, eye.eye().lens().power(), eye.refraction().equivalent());
        if (position.isEmpty() || !clear(position.getAsDouble(), thin)) {
            return new Lesson(errors, NONE, 0);
        }
        double back = position.getAsDouble() - thin.lensPosition().value();
        double slope = (moved(eye, thin, back + STEP) - moved(eye, thin, back - STEP)) / (2 * STEP);
        double depth = eye.shape().anteriorChamberDepth().orElseThrow().value();
        double length = eye.shape().axialLength().value();
        return new Lesson(errors, new double[] {1, depth, length, position.getAsDouble()}, slope);
    }

    /** Far enough from cornea and retina for the slope to be taken. */
    private static boolean clear(double position, ThinEye eye) {
        return position > 2 * STEP && position + 2 * STEP < eye.opticalLength().value();
    }
}
