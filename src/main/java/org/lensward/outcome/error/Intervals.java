package org.lensward.outcome.error;

import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.lensward.outcome.Interval;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;

/** Intervals of shares and of standard deviations. */
final class Intervals {

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    private Intervals() {}

    /** Exact, of a share (Clopper and Pearson, Biometrika 1934;26:404). */
    static Interval<Probability> exact(long some, long all, Probability confidence) {
        double tail = (1 - confidence.value()) / 2;
        double low = some == 0 ? 0 : beta(some, all - some + 1).inverseCumulativeProbability(tail);
        double high = some == all ? 1 : beta(some + 1, all - some).inverseCumulativeProbability(1 - tail);
        return new Interval<>(Probability.of(low), Probability.of(high), confidence);
    }

    private static BetaDistribution beta(long a, long b) {
        return new BetaDistribution(null, a, b);
    }

    /** Of a share, by its score (Wilson, J Am Stat Assoc 1927;22:209). */
    static Interval<Probability> score(long some, long all, Probability confidence) {
        double z = deviate(confidence);
        double share = (double) some / all;
        double centre = share + z * z / (2 * all);
        double half = z * Math.sqrt(share * (1 - share) / all + z * z / (4.0 * all * all));
        double scale = 1 + z * z / all;
        return new Interval<>(
                Probability.of(Math.max(0, (centre - half) / scale)),
                Probability.of(Math.min(1, (centre + half) / scale)),
                confidence);
    }

    /**
     * Of a standard deviation, whatever the shape of the errors: Bonett, Comput Stat Data Anal 2006;50:775 (value from memory). Kurtosis
     * about the trimmed mean stands for the normal's, since prediction errors have heavy tails.
     */
    static Interval<Dioptres> ofDeviation(Moments moments, ErrorHistogram histogram, Probability confidence) {
        double n = moments.count();
        double z = deviate(confidence);
        if (n <= Math.max(4, z)) {
            throw new IllegalArgumentException("No interval from " + moments.count() + " eyes");
        }
        double middle = histogram.trimmedMean(1 / (2 * Math.sqrt(n - 4)));
        double c = n / (n - z);
        double spread = Math.max(0, moments.kurtosisAbout(middle) - (n - 3) / n) / (n - 1);
        double error = c * Math.sqrt(spread);
        double variance = c * moments.deviation() * moments.deviation();
        return new Interval<>(
                Dioptres.of(Math.sqrt(variance * Math.exp(-z * error))),
                Dioptres.of(Math.sqrt(variance * Math.exp(z * error))),
                confidence);
    }

    /** The normal deviate that leaves half of what is not confidence above it. */
    static double deviate(Probability confidence) {
        return NORMAL.inverseCumulativeProbability((1 + confidence.value()) / 2);
    }
}
