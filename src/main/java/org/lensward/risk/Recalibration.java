package org.lensward.risk;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * Fits the model's baseline to a unit's own rate and leaves its odds ratios alone.
 *
 * <p>With observed rate O and expected rate E over the same operations, every log odds moves by {@code ln(O/(1-O)) - ln(E/(1-E))}, which
 * is right to first order; with the operations themselves, the baseline is that at which the expected ruptures equal those observed
 * (calibration in the large: Steyerberg, Clinical Prediction Models, 2009; value from memory).
 */
public final class Recalibration {

    private Recalibration() {}

    /** By how much every log odds moves. */
    static double shift(Probability observed, Probability expected) {
        return logOdds(observed.value()) - logOdds(expected.value());
    }

    /** The probability moved along its log odds. */
    static Probability moved(Probability probability, double shift) {
        return Probability.of(chance(logOdds(probability.value()) + shift));
    }

    /**
     * The baseline at which the model expects as many ruptures as there were.
     *
     * @param oddsRatios of each operation against the reference eye
     * @param ruptures how many there were: at least one, and fewer than the operations
     */
    public static Probability baseline(List<PureNumber> oddsRatios, long ruptures) {
        SortedMap<PureNumber, Long> counted = new TreeMap<>();
        oddsRatios.forEach(each -> counted.merge(each, 1L, Long::sum));
        return baseline(counted, ruptures);
    }

    /**
     * The same from how many operations there were of each odds ratio: a product of a few factors takes few values, however many
     * operations there are.
     *
     * @param operations of each odds ratio
     */
    public static Probability baseline(SortedMap<PureNumber, Long> operations, long ruptures) {
        long all = operations.values().stream().mapToLong(Long::longValue).sum();
        if (ruptures < 1 || ruptures >= all) {
            throw new IllegalArgumentException(
                    "A baseline cannot be fitted to " + ruptures + " ruptures in " + all + " operations");
        }
        double intercept = new BrentSolver(1e-12)
                .solve(
                        1000,
                        candidate -> operations.entrySet().stream()
                                        .mapToDouble(each -> each.getValue()
                                                * chance(candidate
                                                        + Math.log(each.getKey().value())))
                                        .sum()
                                - ruptures,
                        -40,
                        40);
        return Probability.of(chance(intercept));
    }

    private static double logOdds(double probability) {
        return Math.log(probability / (1 - probability));
    }

    private static double chance(double logOdds) {
        return 1 / (1 + Math.exp(-logOdds));
    }
}
