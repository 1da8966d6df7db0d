package org.lensward.outcome.error;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.lensward.optics.FormulaName;
import org.lensward.outcome.error.ErrorSummary.Sizes;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;

/** The prediction errors of one formula in one group, as they pass. */
final class ErrorTally {

    private static final Probability CONFIDENCE = Probability.of(0.95);

    /** A refraction written in quarters minus a prediction is not exact in binary: what is computed at the limit is within it. */
    private static final double SAME = 1e-9;

    private final double[] limits;
    private final long[] within;
    private final Moments moments = new Moments();
    private final ErrorHistogram histogram = new ErrorHistogram();
    private double sizes;

    ErrorTally(double[] limits) {
        this.limits = limits;
        this.within = new long[limits.length];
    }

    void add(double error) {
        moments.add(error);
        histogram.add(error);
        double size = Math.abs(error);
        sizes += size;
        for (int each = 0; each < limits.length; each++) {
            if (size <= limits[each] + SAME) {
                within[each]++;
            }
        }
    }

    void merge(ErrorTally other) {
        moments.merge(other.moments);
        histogram.merge(other.histogram);
        sizes += other.sizes;
        Arrays.setAll(within, each -> within[each] + other.within[each]);
    }

    long count() {
        return moments.count();
    }

    ErrorSummary summary(FormulaName formula) {
        double mean = moments.mean();
        Sizes raw = new Sizes(Dioptres.of(sizes / count()), Dioptres.of(histogram.medianDistance(0)), shares(within));
        long[] about = Arrays.stream(limits)
                .mapToLong(limit -> histogram.within(limit, mean))
                .toArray();
        Sizes zeroed = new Sizes(
                Dioptres.of(histogram.meanDistance(mean)), Dioptres.of(histogram.medianDistance(mean)), shares(about));
        return new ErrorSummary(
                formula,
                count(),
                Dioptres.of(moments.deviation()),
                Intervals.ofDeviation(moments, histogram, CONFIDENCE),
                Dioptres.of(mean),
                raw,
                zeroed);
    }

    private List<Within> shares(long[] some) {
        List<Within> shares = new ArrayList<>();
        for (int each = 0; each < limits.length; each++) {
            shares.add(new Within(
                    Dioptres.of(limits[each]), some[each], count(), Intervals.exact(some[each], count(), CONFIDENCE)));
        }
        return shares;
    }
}
