package org.lensward.optics;

import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Paraxial ray transfer by system matrices, without any vergence formula: the independent check of {@link ThinEye}. A ray is
 * (height in m, reduced slope); refraction and translation as in Gerrard and Burch, Introduction to Matrix Methods in Optics, 1975,
 * chapter II. Parallel light meets on the retina when the height there does not depend on the height at entry: A = 0.
 */
final class RayTransfer {

    private static final double AQUEOUS = 1.336;
    private static final double VERTEX = 12;

    private RayTransfer() {}

    /** A thin lens or a surface of that power in D. */
    static RealMatrix refract(double power) {
        return MatrixUtils.createRealMatrix(new double[][] {{1, 0}, {-power, 1}});
    }

    /** A way of that length in mm through that index. */
    static RealMatrix travel(double length, double index) {
        return MatrixUtils.createRealMatrix(new double[][] {{1, length / 1000 / index}, {0, 1}});
    }

    /** Elements in the order that light meets them. */
    static RealMatrix system(RealMatrix... elements) {
        RealMatrix system = MatrixUtils.createRealIdentityMatrix(2);
        for (RealMatrix element : elements) {
            system = element.multiply(system);
        }
        return system;
    }

    /** The power of the thin lens that images infinity, seen through the spectacle lens, on the retina. */
    static double power(ThinEye eye, double refraction) {
        return focus(power -> spectacledEye(eye, refraction, power));
    }

    /** The power of the spectacle lens that images infinity on the retina. */
    static double refraction(ThinEye eye, double power) {
        return focus(refraction -> spectacledEye(eye, refraction, power));
    }

    /** The power at which a system images infinity on its last plane; A is linear in the power of any one element. */
    static double focus(DoubleFunction<RealMatrix> system) {
        DoubleUnaryOperator a = power -> system.apply(power).getEntry(0, 0);
        double none = a.applyAsDouble(0);
        return -none / (a.applyAsDouble(1) - none);
    }

    private static RealMatrix spectacledEye(ThinEye eye, double refraction, double power) {
        double lens = eye.lensPosition().value();
        double retina = eye.opticalLength().value();
        return system(
                refract(refraction),
                travel(VERTEX, 1),
                refract(eye.cornealPower().value()),
                travel(lens, AQUEOUS),
                refract(power),
                travel(retina - lens, AQUEOUS));
    }
}
