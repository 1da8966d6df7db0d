package org.lensward.outcome.complication;

import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.Exclusion;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.Interval;
import org.lensward.outcome.OutcomePolicy.ComplicationPolicy;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;
import org.lensward.risk.Recalibration;

/**
 * Ruptures against what was expected, in all and by surgeon, as eyes pass. Every operation whose risk was foretold and whose course was
 * told counts, whatever the refractive audit makes of it; one told twice counts once.
 */
public final class ComplicationAudit implements EyeTally<ComplicationAudit> {

    private static final Probability CONFIDENCE = Probability.of(0.95);

    private final ComplicationPolicy policy;
    private final Count all = new Count();
    private final SortedMap<String, Count> surgeons = new TreeMap<>();
    private final SortedMap<PureNumber, Long> oddsRatios = new TreeMap<>();
    private long rupturesWithOdds;
    private long leftOut;

    /** Of no operation yet. */
    public ComplicationAudit(ComplicationPolicy policy) {
        this.policy = policy;
    }

    @Override
    public void add(Admitted admitted) {
        if (admitted instanceof Admitted.Excluded out && out.reason() == Exclusion.DUPLICATE) {
            return;
        }
        Operation.of(admitted.eye()).ifPresentOrElse(this::count, () -> leftOut++);
    }

    private void count(Operation operation) {
        all.add(operation);
        surgeons.computeIfAbsent(operation.surgeon(), any -> new Count()).add(operation);
        operation.oddsRatio().filter(ratio -> ratio.value() > 0).ifPresent(ratio -> {
            oddsRatios.merge(ratio, 1L, Long::sum);
            rupturesWithOdds += operation.rupture() ? 1 : 0;
        });
    }

    @Override
    public void merge(ComplicationAudit other) {
        all.merge(other.all);
        other.surgeons.forEach((surgeon, count) ->
                surgeons.computeIfAbsent(surgeon, any -> new Count()).merge(count));
        other.oddsRatios.forEach((ratio, operations) -> oddsRatios.merge(ratio, operations, Long::sum));
        rupturesWithOdds += other.rupturesWithOdds;
        leftOut += other.leftOut;
    }

    /** Operations without a risk foretold or without a course told. */
    public long leftOut() {
        return leftOut;
    }

    /** Of everyone; empty before the first operation. */
    public Optional<ObservedExpected> everyone() {
        return all.operations == 0 ? Optional.empty() : Optional.of(compared(all));
    }

    /** Of each surgeon, by key. */
    public SortedMap<String, ObservedExpected> surgeons() {
        SortedMap<String, ObservedExpected> each = new TreeMap<>();
        surgeons.forEach((surgeon, count) -> each.put(surgeon, compared(count)));
        return each;
    }

    /** The baseline at which the risk model expects as many ruptures as there were; empty where none or all of the eyes had one. */
    public Optional<Probability> refittedBaseline() {
        long operations =
                oddsRatios.values().stream().mapToLong(Long::longValue).sum();
        return rupturesWithOdds < 1 || rupturesWithOdds >= operations
                ? Optional.empty()
                : Optional.of(Recalibration.baseline(oddsRatios, rupturesWithOdds));
    }

    /**
     * The interval takes the count as Poisson, which is exact for rare events and a little wide otherwise (Ulm, Am J Epidemiol
     * 1990;131:373; value from memory).
     */
    private ObservedExpected compared(Count count) {
        double ratio = count.observed / count.expected;
        double tail = (1 - CONFIDENCE.value()) / 2;
        double low = count.observed == 0 ? 0 : chiSquared(2.0 * count.observed, tail) / 2;
        double high = chiSquared(2.0 * (count.observed + 1), 1 - tail) / 2;
        return new ObservedExpected(
                count.operations,
                count.observed,
                PureNumber.of(count.expected),
                PureNumber.of(count.variance),
                PureNumber.of(ratio),
                new Interval<>(PureNumber.of(low / count.expected), PureNumber.of(high / count.expected), CONFIDENCE),
                Probability.of(Math.min(1, ratio * policy.standard().value().value())));
    }

    private static double chiSquared(double degrees, double share) {
        return new ChiSquaredDistribution(null, degrees).inverseCumulativeProbability(share);
    }

    private static final class Count {

        private long operations;
        private long observed;
        private double expected;
        private double variance;

        void add(Operation operation) {
            double chance = operation.expected().value();
            operations++;
            observed += operation.rupture() ? 1 : 0;
            expected += chance;
            variance += chance * (1 - chance);
        }

        void merge(Count other) {
            operations += other.operations;
            observed += other.observed;
            expected += other.expected;
            variance += other.variance;
        }
    }
}
