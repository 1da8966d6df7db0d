package org.lensward.outcome.constant;

import java.util.Arrays;
import org.apache.commons.math3.stat.StatUtils;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Probability;

/**
 * How far to trust a fit against the constant in use: the weight t^2 / (t^2 + s^2), t the standard deviation of true constants about the
 * one in use and s the standard error of the fit (empirical Bayes: Efron and Morris, J Am Stat Assoc 1975;70:311; value from memory). t
 * is the policy's, for one hospital has too few surgeons to estimate it.
 */
final class Shrinkage {

    private Shrinkage() {}

    /**
     * Between 0, the constant in use, and 1, the fit.
     *
     * @param drawn lens positions fitted to samples of the eyes, in mm
     */
    static double weight(double[] drawn, Millimetres between) {
        double prior = between.value() * between.value();
        double error = StatUtils.variance(drawn);
        return prior / (prior + error);
    }

    /** The ends of a percentile interval. */
    static double[] ends(double[] drawn, Probability confidence) {
        double[] sorted = drawn.clone();
        Arrays.sort(sorted);
        double tail = (1 - confidence.value()) / 2;
        int low = (int) Math.floor(tail * sorted.length);
        return new double[] {sorted[low], sorted[sorted.length - 1 - low]};
    }
}
