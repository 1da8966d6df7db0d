package org.lensward.outcome.complication;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.lensward.outcome.OutcomePolicy.ComplicationPolicy;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * Where a cumulative sum signals.
 *
 * @param worse the upper arm's, above nought
 * @param better the lower arm's, below nought
 */
public record CusumLimits(PureNumber worse, PureNumber better) {

    public CusumLimits {
        if (worse.value() <= 0 || better.value() >= 0) {
            throw new IllegalArgumentException("Limits lie on both sides of nought: " + worse + ", " + better);
        }
    }

    /**
     * By simulation: series as long as the policy's horizon, drawn from this mix of risks, in which ruptures come as foretold. Each limit
     * is the level that an arm passes in no more than the policy's share of series.
     *
     * @param mix risks of past operations, in any order; not empty
     * @param random the same state gives the same limits
     */
    public static CusumLimits simulated(List<Probability> mix, ComplicationPolicy policy, RandomGenerator random) {
        double[] risks = mix.stream().mapToDouble(Probability::value).toArray();
        if (risks.length == 0) {
            throw new IllegalArgumentException("No risks to draw from");
        }
        int series = (int) policy.simulations().value().value();
        double odds = policy.odds().value().value();
        double[] highest = new double[series];
        double[] lowest = new double[series];
        for (int each = 0; each < series; each++) {
            CusumArms arms = new CusumArms(odds);
            for (int operation = 0; operation < policy.horizon().value().value(); operation++) {
                double risk = risks[random.nextInt(risks.length)];
                arms.next(risk, random.nextDouble() < risk);
                highest[each] = Math.max(highest[each], arms.worse());
                lowest[each] = Math.max(lowest[each], -arms.better());
            }
        }
        double passed = policy.falseAlarms().value().value();
        return new CusumLimits(PureNumber.of(level(highest, passed)), PureNumber.of(-level(lowest, passed)));
    }

    /** Just above the largest value that more than the share of series reached. */
    private static double level(double[] reached, double share) {
        Arrays.sort(reached);
        int above = (int) Math.floor(share * reached.length);
        return Math.nextUp(Math.max(reached[reached.length - 1 - above], 0));
    }
}
