package org.lensward.outcome.constant;

import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/** How the errors of one formula depend on where its lenses lie, relative to where the constant in use puts them. */
final class PositionErrors {

    /** How many sums: the number of eyes, the errors at each node, their squares at each node. */
    static final int WIDTH = 1 + 2 * PositionNodes.COUNT;

    /** Closer to the end of the reach, a least value is the end's and not the eyes'. */
    private static final double INSIDE = 0.99 * PositionNodes.REACH;

    private final double eyes;
    private final double[] means = new double[PositionNodes.COUNT];
    private final double[] squares = new double[PositionNodes.COUNT];

    /** From sums that begin there. */
    PositionErrors(RealVector sums, int from) {
        eyes = sums.getEntry(from);
        for (int node = 0; node < PositionNodes.COUNT; node++) {
            means[node] = sums.getEntry(from + 1 + node) / eyes;
            squares[node] = sums.getEntry(from + 1 + PositionNodes.COUNT + node) / eyes;
        }
    }

    /** Adds one eye's errors at the nodes. */
    static void add(RealVector sums, int from, double[] errors) {
        sums.addToEntry(from, 1);
        for (int node = 0; node < PositionNodes.COUNT; node++) {
            sums.addToEntry(from + 1 + node, errors[node]);
            sums.addToEntry(from + 1 + PositionNodes.COUNT + node, errors[node] * errors[node]);
        }
    }

    long eyes() {
        return (long) eyes;
    }

    double mean(double position) {
        return PositionNodes.at(position, means);
    }

    double meanSquare(double position) {
        return PositionNodes.at(position, squares);
    }

    /** About the mean, divided by the number of eyes. */
    double variance(double position) {
        double mean = mean(position);
        return Math.max(0, meanSquare(position) - mean * mean);
    }

    /** With eyes - 1 degrees of freedom. */
    double deviation(double position) {
        return Math.sqrt(variance(position) * eyes / (eyes - 1));
    }

    /** The position that the aim asks for, in mm behind the one in use; empty where it lies out of reach. */
    OptionalDouble best(Aim aim) {
        return switch (aim) {
            case ZERO_MEAN -> root();
            case LEAST_DEVIATION -> least(this::variance);
            case LEAST_SQUARES -> least(this::meanSquare);
            case POSITION_REGRESSION -> OptionalDouble.empty();
        };
    }

    private OptionalDouble root() {
        double reach = PositionNodes.REACH;
        if (!(mean(-reach) * mean(reach) < 0)) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(new BrentSolver(1e-12, 1e-12, 1e-15).solve(100, this::mean, -reach, reach));
    }

    private OptionalDouble least(UnivariateFunction goal) {
        double found = new BrentOptimizer(1e-9, 1e-12)
                .optimize(
                        new MaxEval(500),
                        GoalType.MINIMIZE,
                        new UnivariateObjectiveFunction(goal),
                        new SearchInterval(-PositionNodes.REACH, PositionNodes.REACH))
                .getPoint();
        return Math.abs(found) < INSIDE ? OptionalDouble.of(found) : OptionalDouble.empty();
    }

    /** None where there are too few eyes to speak of a deviation. */
    static Optional<PositionErrors> of(RealVector sums, int from) {
        return sums.getEntry(from) < 2 ? Optional.empty() : Optional.of(new PositionErrors(sums, from));
    }
}
