package org.lensward.outcome.picture;

import java.util.ArrayList;
import java.util.List;
import org.lensward.optics.FormulaName;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.EyeTally;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/** How one formula's error goes with the length of the eye: mean and standard deviation for each half millimetre. */
public final class LengthBins implements EyeTally<LengthBins> {

    private static final double SHORTEST = 20;
    private static final double STEP = 0.5;
    private static final int BINS = 24;

    /** A deviation of fewer is not shown. */
    private static final int FEWEST = 3;

    private final FormulaName formula;
    private final long[] eyes = new long[BINS];
    private final double[] sums = new double[BINS];
    private final double[] squares = new double[BINS];

    public LengthBins(FormulaName formula) {
        this.formula = formula;
    }

    /**
     * Eyes of like length.
     *
     * @param middle of their lengths
     * @param eyes how many; at least three
     * @param mean of their errors
     * @param deviation of their errors, eyes - 1 degrees of freedom
     */
    public record Bin(Millimetres middle, long eyes, Dioptres mean, Dioptres deviation) {}

    @Override
    public void add(Admitted admitted) {
        if (admitted instanceof Admitted.Counted counted && counted.seen().containsKey(formula)) {
            double length = counted.biometry().axialLength().value().value();
            int bin = (int) Math.max(0, Math.min(BINS - 1, Math.floor((length - SHORTEST) / STEP)));
            double error = counted.error(formula).value();
            eyes[bin]++;
            sums[bin] += error;
            squares[bin] += error * error;
        }
    }

    @Override
    public void merge(LengthBins other) {
        for (int bin = 0; bin < BINS; bin++) {
            eyes[bin] += other.eyes[bin];
            sums[bin] += other.sums[bin];
            squares[bin] += other.squares[bin];
        }
    }

    /** Those with enough eyes, shortest first. */
    public List<Bin> bins() {
        List<Bin> bins = new ArrayList<>();
        for (int bin = 0; bin < BINS; bin++) {
            if (eyes[bin] >= FEWEST) {
                double mean = sums[bin] / eyes[bin];
                double variance = Math.max(0, squares[bin] - eyes[bin] * mean * mean) / (eyes[bin] - 1);
                bins.add(new Bin(
                        Millimetres.of(SHORTEST + (bin + 0.5) * STEP),
                        eyes[bin],
                        Dioptres.of(mean),
                        Dioptres.of(Math.sqrt(variance))));
            }
        }
        return List.copyOf(bins);
    }
}
