package org.lensward.outcome.complication;

import org.apache.commons.math3.distribution.BinomialDistribution;
import org.lensward.quantity.Probability;

/**
 * Exact binomial limits of a funnel plot at one number of operations (Spiegelhalter, Stat Med 2005;24:1185; discrete limits). A count on
 * an upper limit or below it is common variation.
 *
 * @param operations of the unit or surgeon
 * @param lowerAlarm largest count k with P(X &lt;= k) at most 0.0005: so few are too few; -1 where none is
 * @param lowerWarning the same with 0.025
 * @param upperWarning smallest count k with P(X &lt;= k) at least 0.975
 * @param upperAlarm smallest count k with P(X &lt;= k) at least 0.9995
 */
public record FunnelLimits(long operations, long lowerAlarm, long lowerWarning, long upperWarning, long upperAlarm) {

    private static final double WARNING = 0.975;
    private static final double ALARM = 0.9995;

    /**
     * The limits about a rate.
     *
     * @param operations one or more, two thousand million at most
     * @param standard the rate to compare with
     */
    public static FunnelLimits at(long operations, Probability standard) {
        BinomialDistribution count = new BinomialDistribution(null, Math.toIntExact(operations), standard.value());
        return new FunnelLimits(
                operations,
                below(count, 1 - ALARM),
                below(count, 1 - WARNING),
                above(count, WARNING),
                above(count, ALARM));
    }

    private static long above(BinomialDistribution count, double share) {
        return count.inverseCumulativeProbability(share);
    }

    /** The largest count whose chance, with all smaller ones, is no more than the tail. */
    private static long below(BinomialDistribution count, double tail) {
        int first = count.inverseCumulativeProbability(tail);
        return count.cumulativeProbability(first) <= tail ? first : first - 1;
    }

    /** Where a count lies. */
    public enum Position {
        FEWER_ALARM,
        FEWER_WARNING,
        COMMON,
        MORE_WARNING,
        MORE_ALARM
    }

    /** Where so many ruptures lie. */
    public Position position(long ruptures) {
        if (ruptures > upperWarning) {
            return ruptures > upperAlarm ? Position.MORE_ALARM : Position.MORE_WARNING;
        }
        if (ruptures <= lowerWarning) {
            return ruptures <= lowerAlarm ? Position.FEWER_ALARM : Position.FEWER_WARNING;
        }
        return Position.COMMON;
    }
}
