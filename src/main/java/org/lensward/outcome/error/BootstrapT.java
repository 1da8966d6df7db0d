package org.lensward.outcome.error;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.random.RandomGenerator;
import org.lensward.outcome.Interval;
import org.lensward.outcome.OutcomePolicy.LearningPolicy;
import org.lensward.outcome.PatientBlocks;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * The symmetric bootstrap-t of a ratio of standard deviations: each sample's distance from the estimate, in its own standard errors,
 * takes the place of Student's t (Efron and Tibshirani, An Introduction to the Bootstrap, 1993, chapter 12; value from memory).
 */
final class BootstrapT {

    private final List<RealVector> blocks;
    private final List<List<RealVector>> samples;
    private final Probability confidence;

    /** The same samples serve every pair, so that pairs are compared on the same eyes. */
    BootstrapT(PatientBlocks blocks, LearningPolicy policy, RandomGenerator random) {
        this.blocks = blocks.filled();
        this.samples = Stream.generate(() -> blocks.drawn(random))
                .limit((long) policy.replicates().value().value())
                .toList();
        this.confidence = policy.confidence().value();
    }

    /**
     * What the samples say of one pair.
     *
     * @param chance of a ratio as far from 1 if both scattered alike
     * @param ratio interval of first by second
     */
    record Said(double chance, Interval<PureNumber> ratio) {}

    Said of(int one, int two) {
        DeviationRatio own = DeviationRatio.of(blocks, one, two);
        double[] distances = samples.stream()
                .mapToDouble(
                        sample -> Math.abs(DeviationRatio.of(sample, one, two).from(own.logarithm())))
                .sorted()
                .toArray();
        double distance = Math.abs(own.from(0));
        long further = Arrays.stream(distances).filter(each -> each >= distance).count();
        int rank = (int) Math.ceil(confidence.value() * (distances.length + 1)) - 1;
        double half = distances[Math.min(distances.length - 1, rank)] * own.error();
        return new Said(
                (1.0 + further) / (1.0 + distances.length),
                new Interval<>(
                        PureNumber.of(Math.exp(own.logarithm() - half)),
                        PureNumber.of(Math.exp(own.logarithm() + half)),
                        confidence));
    }
}
