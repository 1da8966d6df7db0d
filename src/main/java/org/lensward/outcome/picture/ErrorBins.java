package org.lensward.outcome.picture;

import java.util.ArrayList;
import java.util.List;
import org.lensward.optics.FormulaName;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.EyeTally;
import org.lensward.quantity.Dioptres;

/** How many eyes ended how far from one formula's prediction, in steps of a quarter dioptre; the outermost steps hold all beyond. */
public final class ErrorBins implements EyeTally<ErrorBins> {

    private static final double STEP = 0.25;
    private static final int EACH_WAY = 8;
    private static final int BINS = 2 * EACH_WAY + 1;

    private final FormulaName formula;
    private final long[] eyes = new long[BINS];

    public ErrorBins(FormulaName formula) {
        this.formula = formula;
    }

    /**
     * One step.
     *
     * @param middle of the step; errors up to an eighth of a dioptre either side are in it
     * @param eyes in it
     */
    public record Bin(Dioptres middle, long eyes) {}

    @Override
    public void add(Admitted admitted) {
        if (admitted instanceof Admitted.Counted counted && counted.seen().containsKey(formula)) {
            double steps = Math.rint(counted.error(formula).value() / STEP);
            eyes[(int) Math.max(0, Math.min(BINS - 1, steps + EACH_WAY))]++;
        }
    }

    @Override
    public void merge(ErrorBins other) {
        for (int bin = 0; bin < BINS; bin++) {
            eyes[bin] += other.eyes[bin];
        }
    }

    /** Every step, most myopic first. */
    public List<Bin> bins() {
        List<Bin> bins = new ArrayList<>();
        for (int bin = 0; bin < BINS; bin++) {
            bins.add(new Bin(Dioptres.of((bin - EACH_WAY) * STEP), eyes[bin]));
        }
        return List.copyOf(bins);
    }
}
