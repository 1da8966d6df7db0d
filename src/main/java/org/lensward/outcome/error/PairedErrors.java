package org.lensward.outcome.error;

import java.util.List;
import org.apache.commons.math3.linear.RealVector;
import org.lensward.optics.FormulaName;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.PatientBlocks;

/** First pass of a comparison: how the errors of several formulas vary, and vary together, over the eyes that all of them see. */
final class PairedErrors implements EyeTally<PairedErrors> {

    private final List<FormulaName> formulas;
    private final double[] means;
    private final double[][] products;
    private final PatientBlocks blocks;
    private long eyes;

    PairedErrors(List<FormulaName> formulas) {
        this.formulas = formulas;
        this.means = new double[formulas.size()];
        this.products = new double[formulas.size()][formulas.size()];
        this.blocks = new PatientBlocks(1 + 2 * formulas.size());
    }

    List<FormulaName> formulas() {
        return formulas;
    }

    /** The errors, in the order of the formulas; empty where one does not see the eye. */
    static double[] errors(List<FormulaName> formulas, Admitted admitted) {
        if (!(admitted instanceof Admitted.Counted counted)
                || !counted.seen().keySet().containsAll(formulas)) {
            return new double[0];
        }
        return formulas.stream()
                .mapToDouble(formula -> counted.error(formula).value())
                .toArray();
    }

    @Override
    public void add(Admitted admitted) {
        double[] errors = errors(formulas, admitted);
        if (errors.length == 0) {
            return;
        }
        eyes++;
        RealVector sums = blocks.of(admitted.eye().keys());
        sums.addToEntry(0, 1);
        double[] before = new double[errors.length];
        for (int each = 0; each < errors.length; each++) {
            sums.addToEntry(1 + 2 * each, errors[each]);
            sums.addToEntry(2 + 2 * each, errors[each] * errors[each]);
            before[each] = errors[each] - means[each];
            means[each] += before[each] / eyes;
        }
        for (int one = 0; one < errors.length; one++) {
            for (int two = 0; two < errors.length; two++) {
                products[one][two] += before[one] * (errors[two] - means[two]);
            }
        }
    }

    @Override
    public void merge(PairedErrors other) {
        if (other.eyes == 0) {
            return;
        }
        double both = (double) eyes + other.eyes;
        double weight = (double) eyes * other.eyes / both;
        for (int one = 0; one < means.length; one++) {
            for (int two = 0; two < means.length; two++) {
                products[one][two] += other.products[one][two]
                        + (other.means[one] - means[one]) * (other.means[two] - means[two]) * weight;
            }
        }
        for (int each = 0; each < means.length; each++) {
            means[each] += (other.means[each] - means[each]) * other.eyes / both;
        }
        eyes += other.eyes;
        blocks.merge(other.blocks);
    }

    long eyes() {
        return eyes;
    }

    double mean(int formula) {
        return means[formula];
    }

    /** With eyes - 1 degrees of freedom. */
    double deviation(int formula) {
        return Math.sqrt(products[formula][formula] / (eyes - 1));
    }

    /** The sum of squares of the sum of both errors about its mean. */
    double squaresOfSum(int one, int two) {
        return products[one][one] + 2 * products[one][two] + products[two][two];
    }

    /** The slope of the difference of both errors upon their sum; nought where they vary alike. */
    double slope(int one, int two) {
        return (products[one][one] - products[two][two]) / squaresOfSum(one, two);
    }

    PatientBlocks blocks() {
        return blocks;
    }
}
