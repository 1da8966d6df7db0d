package org.lensward.outcome.error;

import org.lensward.optics.FormulaName;
import org.lensward.outcome.Interval;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * Two formulas on the same eyes.
 *
 * @param first one formula
 * @param second the other
 * @param eyes that every formula compared has a prediction for
 * @param deviationOfFirst standard deviation of its errors
 * @param deviationOfSecond likewise
 * @param statistic of the heteroscedastic test; above nought where the first scatters more
 * @param heteroscedastic chance of such a difference if they scattered alike, by the heteroscedastic regression
 * @param bootstrap the same by the bootstrap-t
 * @param ratio first by second deviation, with its interval by the bootstrap-t
 */
public record ComparedPair(
        FormulaName first,
        FormulaName second,
        long eyes,
        Dioptres deviationOfFirst,
        Dioptres deviationOfSecond,
        PureNumber statistic,
        Chance heteroscedastic,
        Chance bootstrap,
        Interval<PureNumber> ratio) {

    /**
     * A chance, two-sided.
     *
     * @param alone as if no other pair were compared
     * @param adjusted for all pairs compared (Holm, Scand J Stat 1979;6:65)
     */
    public record Chance(Probability alone, Probability adjusted) {}
}
