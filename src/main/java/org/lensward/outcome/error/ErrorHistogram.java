package org.lensward.outcome.error;

import java.util.Arrays;

/**
 * Counts of errors in bins of 0.005 D from -10 to +10 D; what lies beyond falls into the outermost bins. Every figure taken from it is
 * exact to half a bin, 0.0025 D; no refraction is measured to that.
 */
final class ErrorHistogram {

    private static final double BIN = 0.005;
    private static final int HALF = 2000;

    private final int[] counts = new int[2 * HALF];

    void add(double error) {
        counts[bin(error)]++;
    }

    void merge(ErrorHistogram other) {
        Arrays.setAll(counts, bin -> counts[bin] + other.counts[bin]);
    }

    private static int bin(double error) {
        int bin = (int) Math.floor(error / BIN) + HALF;
        return Math.max(0, Math.min(2 * HALF - 1, bin));
    }

    private static double centre(int bin) {
        return (bin - HALF + 0.5) * BIN;
    }

    long total() {
        return Arrays.stream(counts).asLongStream().sum();
    }

    /** The mean distance from a point. */
    double meanDistance(double from) {
        double sum = 0;
        for (int bin = 0; bin < counts.length; bin++) {
            sum += counts[bin] * Math.abs(centre(bin) - from);
        }
        return sum / total();
    }

    /** How many lie no further than that from a point; a bin that straddles the edge counts by the part of it inside. */
    long within(double limit, double from) {
        double sum = 0;
        for (int bin = 0; bin < counts.length; bin++) {
            double inside =
                    Math.min(centre(bin) + BIN / 2, from + limit) - Math.max(centre(bin) - BIN / 2, from - limit);
            sum += counts[bin] * Math.max(0, Math.min(1, inside / BIN));
        }
        return Math.round(sum);
    }

    /** The median distance from a point. */
    double medianDistance(double from) {
        long[] order = new long[counts.length];
        for (int bin = 0; bin < counts.length; bin++) {
            // The distance in the upper half of a key and the bin in the lower, so that sorting keeps them together.
            order[bin] = Math.round(Math.abs(centre(bin) - from) * 1e9) << 12 | bin;
        }
        Arrays.sort(order);
        long all = total();
        double lower = distanceAt(order, (all - 1) / 2, from);
        return (lower + distanceAt(order, all / 2, from)) / 2;
    }

    private double distanceAt(long[] order, long rank, double from) {
        long passed = 0;
        for (long key : order) {
            int bin = (int) (key & 4095);
            passed += counts[bin];
            if (passed > rank) {
                return Math.abs(centre(bin) - from);
            }
        }
        throw new IllegalStateException("No error of rank " + rank);
    }

    /** The mean without that share of the smallest and of the largest. */
    double trimmedMean(double share) {
        long all = total();
        double cut = share * all;
        double before = 0;
        double sum = 0;
        for (int bin = 0; bin < counts.length; bin++) {
            double kept = Math.min(before + counts[bin], all - cut) - Math.max(before, cut);
            sum += Math.max(0, kept) * centre(bin);
            before += counts[bin];
        }
        return sum / (all - 2 * cut);
    }
}
