package org.lensward.outcome.constant;

import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.lensward.optics.HaigisConstants;
import org.lensward.optics.LensConstants;

/**
 * Haigis' three constants by regression of the lens position that explains each refraction on (1, ACD, AL), from sums alone (the triple
 * optimisation of Haigis et al., Graefe's Arch 2000;238:765). Lengths are taken from the middle of common eyes, so that sums keep their
 * digits.
 */
final class HaigisSums {

    /** Each eye is (1, ACD, AL, d): ten sums of products, ten weighted by squared slopes, four weighted by slopes. */
    static final int WIDTH = 24;

    private static final int TERMS = 4;
    private static final double[] MIDDLE = {0, 3.1, 23.5, 5};

    /** Flatter spreads of chamber depth or length than this, in mm squared per eye, carry no slope. */
    private static final double FLAT = 1e-12;

    private final RealMatrix plain;
    private final RealMatrix weighted;
    private final RealVector sloped;

    HaigisSums(RealVector sums, int from) {
        plain = matrix(sums, from);
        weighted = matrix(sums, from + 10);
        sloped = sums.getSubVector(from + 20, TERMS);
    }

    private static RealMatrix matrix(RealVector sums, int from) {
        RealMatrix matrix = new Array2DRowRealMatrix(TERMS, TERMS);
        int at = from;
        for (int row = 0; row < TERMS; row++) {
            for (int column = row; column < TERMS; column++) {
                matrix.setEntry(row, column, sums.getEntry(at));
                matrix.setEntry(column, row, sums.getEntry(at++));
            }
        }
        return matrix;
    }

    /**
     * Adds one eye.
     *
     * @param eye 1, then ACD, AL and the position that explains its refraction, in mm
     * @param slope how its refraction answers to the position, D/mm
     */
    static void add(RealVector sums, int from, double[] eye, double slope) {
        int at = from;
        for (int row = 0; row < TERMS; row++) {
            for (int column = row; column < TERMS; column++) {
                double product = (eye[row] - MIDDLE[row]) * (eye[column] - MIDDLE[column]);
                sums.addToEntry(at, product);
                sums.addToEntry(at + 10, product * slope * slope);
                at++;
            }
            sums.addToEntry(from + 20 + row, slope * (eye[row] - MIDDLE[row]));
        }
    }

    long eyes() {
        return (long) plain.getEntry(0, 0);
    }

    /** a0 in mm, a1 and a2 of unit one: the lens lies at a0 + a1 ACD + a2 AL. */
    record Three(double a0, double a1, double a2) {

        static Three of(LensConstants constants) {
            HaigisConstants three = constants.haigis().orElseThrow().value();
            return new Three(three.a0().value(), three.a1().value(), three.a2().value());
        }

        LensConstants constants() {
            return OneConstant.three(a0, a1, a2);
        }

        /** So much of the way to others; every lens then goes the same part of its way. */
        Three towards(Three other, double weight) {
            return new Three(
                    a0 + weight * (other.a0 - a0), a1 + weight * (other.a1 - a1), a2 + weight * (other.a2 - a2));
        }

        private RealVector fromMiddle() {
            double constant = a0 + a1 * MIDDLE[1] + a2 * MIDDLE[2] - MIDDLE[3];
            return new ArrayRealVector(new double[] {constant, a1, a2, -1});
        }
    }

    /** Empty where the eyes are too few or too alike. */
    Optional<Three> fit() {
        if (eyes() < 4) {
            return Optional.empty();
        }
        RealMatrix left = plain.getSubMatrix(0, 2, 0, 2);
        RealVector right = plain.getColumnVector(3).getSubVector(0, 3);
        SingularValueDecomposition decomposed = new SingularValueDecomposition(left);
        if (decomposed.getSingularValues()[2] < FLAT * eyes()) {
            return Optional.empty();
        }
        RealVector solved = decomposed.getSolver().solve(right);
        double a1 = solved.getEntry(1);
        double a2 = solved.getEntry(2);
        return Optional.of(new Three(solved.getEntry(0) + MIDDLE[3] - a1 * MIDDLE[1] - a2 * MIDDLE[2], a1, a2));
    }

    /** The mean error that these constants would leave, to first order in the distance of each lens from its place. */
    double mean(Three constants) {
        return -sloped.dotProduct(constants.fromMiddle()) / eyes();
    }

    /** The standard deviation of the errors, to the same order. */
    double deviation(Three constants) {
        RealVector apart = constants.fromMiddle();
        double squares = weighted.operate(apart).dotProduct(apart);
        double mean = mean(constants);
        double eyes = eyes();
        return Math.sqrt(Math.max(0, squares - eyes * mean * mean) / (eyes - 1));
    }

    /** Where these constants put the lens of the mean eye, in mm. */
    double position(Three constants) {
        return constants.a0()
                + constants.a1() * (MIDDLE[1] + plain.getEntry(0, 1) / eyes())
                + constants.a2() * (MIDDLE[2] + plain.getEntry(0, 2) / eyes());
    }
}
