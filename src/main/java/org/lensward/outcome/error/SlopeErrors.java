package org.lensward.outcome.error;

import java.util.Arrays;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.EyeTally;

/**
 * Second pass of a comparison: how sure each slope of the difference upon the sum is, where the scatter may change along the sum.
 *
 * <pre>
 * h  = 1/n + (S - mean S)^2 / SS          leverage of an eye
 * d  = min(4, n h / 2)
 * v  = sum (S - mean S)^2 e^2 / (1 - h)^d / SS^2
 * </pre>
 *
 * HC4: Cribari-Neto, Comput Stat Data Anal 2004;45:215 (value from memory).
 */
final class SlopeErrors implements EyeTally<SlopeErrors> {

    private final PairedErrors first;
    private final double[][] sums;

    SlopeErrors(PairedErrors first) {
        this.first = first;
        this.sums = new double[first.formulas().size()][first.formulas().size()];
    }

    @Override
    public void add(Admitted admitted) {
        double[] errors = PairedErrors.errors(first.formulas(), admitted);
        for (int one = 0; one < errors.length; one++) {
            for (int two = one + 1; two < errors.length; two++) {
                double x = errors[one] - first.mean(one);
                double y = errors[two] - first.mean(two);
                sums[one][two] += term(one, two, x, y);
            }
        }
    }

    private double term(int one, int two, double x, double y) {
        double n = first.eyes();
        double sum = x + y;
        double residual = x - y - first.slope(one, two) * sum;
        double leverage = 1 / n + sum * sum / first.squaresOfSum(one, two);
        double power = Math.min(4, n * leverage / 2);
        return sum * sum * residual * residual / Math.pow(1 - leverage, power);
    }

    @Override
    public void merge(SlopeErrors other) {
        for (int one = 0; one < sums.length; one++) {
            double[] theirs = other.sums[one];
            double[] ours = sums[one];
            Arrays.setAll(ours, two -> ours[two] + theirs[two]);
        }
    }

    /** The slope by its standard error. */
    double statistic(int one, int two) {
        double error = Math.sqrt(sums[one][two]) / first.squaresOfSum(one, two);
        return first.slope(one, two) / error;
    }
}
