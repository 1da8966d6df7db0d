package org.lensward.optics;

import org.apache.commons.math3.analysis.polynomials.PolynomialFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.util.FastMath;
import org.apache.commons.math3.util.MathArrays;

/**
 * The theoretic formulas that were printed as one fraction of radii and lengths (Holladay et al. 1988 and Retzlaff et al. 1990, in both
 * papers' appendix); T2 (Sheard et al. 2010) shares SRK/T's.
 */
final class RationalForms {

    private static final double AQUEOUS = 1.336;
    private static final double VERTEX = 12;

    private RationalForms() {}

    /**
     * The printed fraction: 1336 (na r - nc1 L - 0.001 R (V (na r - nc1 L) + L r)) over (L - d) times the same with d for L.
     *
     * @param cornea nc1, the corneal index less one
     * @param r corneal radius
     */
    record Fraction(double cornea, double r, double length, double position) {

        double power(double refraction) {
            return 1000 * AQUEOUS * part(length, refraction) / ((length - position) * part(position, refraction));
        }

        /** The same equation solved for the refraction, as both papers print it. */
        double refraction(double power) {
            double free = 1000 * AQUEOUS * bare(length) - power * (length - position) * bare(position);
            double bound = AQUEOUS * weighted(length) - 0.001 * power * (length - position) * weighted(position);
            return free / bound;
        }

        private double part(double distance, double refraction) {
            return bare(distance) - 0.001 * refraction * weighted(distance);
        }

        private double bare(double distance) {
            return AQUEOUS * r - cornea * distance;
        }

        private double weighted(double distance) {
            return VERTEX * bare(distance) + distance * r;
        }
    }

    static Fraction srkT(OriginalForm.Given eye) {
        PolynomialFunction corrected = eye.length() > 24.2
                ? new PolynomialFunction(new double[] {-3.446, 1.716, -0.0237})
                : new PolynomialFunction(new double[] {0, 1});
        double width = MathArrays.linearCombination(0.58412, corrected.value(eye.length()), 0.098, eye.k(), 1, -5.41);
        return retzlaff(eye, sagittaBySearch(eye.radius(), width));
    }

    static Fraction t2(OriginalForm.Given eye) {
        double height = MathArrays.linearCombination(
                new double[] {-10.326, 0.32630, 0.13533}, new double[] {1, eye.length(), eye.k()});
        return retzlaff(eye, height);
    }

    private static Fraction retzlaff(OriginalForm.Given eye, double height) {
        double offset = new PolynomialFunction(new double[] {-68.747 - 3.336, 0.62467}).value(OriginalForm.Given.A);
        double retina = new PolynomialFunction(new double[] {0.65696, 1 - 0.02029}).value(eye.length());
        return new Fraction(0.333, eye.radius(), retina, height + offset);
    }

    static Fraction holladay1(OriginalForm.Given eye) {
        double radius = FastMath.max(7, eye.radius());
        double diameter = FastMath.min(13.5, eye.length() * 12.5 / 23.45);
        double chamber = 0.56 + sagittaByAngle(radius, diameter);
        return new Fraction(1.0 / 3, eye.radius(), eye.length() + 0.2, chamber + OriginalForm.Given.SURGEON_FACTOR);
    }

    /** Where a chord of that width lies below the pole of a sphere: (width / 2)^2 = h (2 r - h), by search; r where there is none. */
    private static double sagittaBySearch(double radius, double width) {
        if (width >= 2 * radius) {
            return radius;
        }
        return new BrentSolver(1e-15, 1e-15)
                .solve(200, height -> height * (2 * radius - height) - width * width / 4, 0, radius);
    }

    /** The same by the angle the chord subtends: 2 r sin^2(angle / 4) from the centre. */
    private static double sagittaByAngle(double radius, double width) {
        double quarter = FastMath.asin(width / 2 / radius) / 2;
        return 2 * radius * FastMath.pow(FastMath.sin(quarter), 2);
    }
}
