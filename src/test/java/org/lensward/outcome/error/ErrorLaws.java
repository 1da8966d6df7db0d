package org.lensward.outcome.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.lensward.optics.FormulaName;

/** Tallies against the whole list in memory, by Commons Math. */
class ErrorLaws {

    private static final double[] LIMITS = {0.25, 0.5, 0.75, 1};
    private static final double SAME = 1e-9;

    @Provide
    Arbitrary<List<Double>> errors() {
        return Arbitraries.doubles()
                .between(-3, 3)
                .ofScale(3)
                .list()
                .ofMinSize(6)
                .ofMaxSize(300);
    }

    private static ErrorTally tally(List<Double> errors) {
        ErrorTally tally = new ErrorTally(LIMITS);
        errors.forEach(tally::add);
        return tally;
    }

    private static ErrorSummary summary(List<Double> errors) {
        return tally(errors).summary(FormulaName.T2);
    }

    @Property(tries = 200)
    void figures_are_those_of_the_whole_list(@ForAll("errors") List<Double> errors) {
        ErrorSummary summary = summary(errors);
        DescriptiveStatistics all = new DescriptiveStatistics();
        DescriptiveStatistics sizes = new DescriptiveStatistics();
        DescriptiveStatistics zeroed = new DescriptiveStatistics();
        errors.forEach(all::addValue);
        errors.forEach(each -> sizes.addValue(Math.abs(each)));
        errors.forEach(each -> zeroed.addValue(Math.abs(each - all.getMean())));
        assertThat(summary.mean().value()).isCloseTo(all.getMean(), within(SAME));
        assertThat(summary.deviation().value()).isCloseTo(all.getStandardDeviation(), within(SAME));
        assertThat(summary.raw().meanAbsolute().value()).isCloseTo(sizes.getMean(), within(SAME));
        assertThat(summary.raw().medianAbsolute().value()).isCloseTo(median(sizes), within(0.0025 + SAME));
        assertThat(summary.zeroed().meanAbsolute().value()).isCloseTo(zeroed.getMean(), within(0.0025 + SAME));
        assertThat(summary.zeroed().medianAbsolute().value()).isCloseTo(median(zeroed), within(0.0025 + SAME));
        summary.raw().within().forEach(share -> assertThat(share.eyes())
                .isEqualTo(errors.stream()
                        .filter(each -> Math.abs(each) <= share.limit().value() + SAME)
                        .count()));
    }

    private static double median(DescriptiveStatistics values) {
        double[] sorted = values.getSortedValues();
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    @Property(tries = 200)
    void parts_make_the_whole_in_any_order(
            @ForAll("errors") List<Double> one,
            @ForAll("errors") List<Double> two,
            @ForAll("errors") List<Double> three) {
        ErrorTally forward = tally(one);
        forward.merge(tally(two));
        forward.merge(tally(three));
        ErrorTally backward = tally(three);
        ErrorTally inner = tally(two);
        inner.merge(tally(one));
        backward.merge(inner);
        backward.merge(new ErrorTally(LIMITS));
        ErrorSummary a = forward.summary(FormulaName.T2);
        ErrorSummary b = backward.summary(FormulaName.T2);
        assertThat(a.deviation().value()).isCloseTo(b.deviation().value(), within(SAME));
        assertThat(a.mean().value()).isCloseTo(b.mean().value(), within(SAME));
        assertThat(a.deviationInterval().high().value())
                .isCloseTo(b.deviationInterval().high().value(), within(1e-6));
        assertThat(a.raw().within()).isEqualTo(b.raw().within());
        assertThat(a.raw().medianAbsolute()).isEqualTo(b.raw().medianAbsolute());
    }

    /** A shift by whole bins, so that the histogram shifts as the errors do. */
    @Property(tries = 200)
    void a_shift_moves_the_mean_and_nothing_else(
            @ForAll("errors") List<Double> errors, @ForAll @IntRange(min = -200, max = 200) int bins) {
        double by = bins * 0.005;
        ErrorSummary before = summary(errors);
        ErrorSummary after = summary(errors.stream().map(each -> each + by).toList());
        assertThat(after.mean().value()).isCloseTo(before.mean().value() + by, within(SAME));
        assertThat(after.deviation().value()).isCloseTo(before.deviation().value(), within(SAME));
        // A value on the edge of a bin may fall to either side of it: one bin.
        assertThat(after.zeroed().medianAbsolute().value())
                .isCloseTo(before.zeroed().medianAbsolute().value(), within(0.005 + SAME));
        assertThat(after.zeroed().meanAbsolute().value())
                .isCloseTo(before.zeroed().meanAbsolute().value(), within(0.005 + SAME));
    }

    @Property(tries = 200)
    void a_mirror_changes_no_size(@ForAll("errors") List<Double> errors) {
        ErrorSummary before = summary(errors);
        ErrorSummary after = summary(errors.stream().map(each -> -each).toList());
        assertThat(after.deviation().value()).isCloseTo(before.deviation().value(), within(SAME));
        assertThat(after.raw().within()).isEqualTo(before.raw().within());
    }

    @Property(tries = 50)
    void what_lies_beyond_the_histogram_still_counts(@ForAll @DoubleRange(min = 10, max = 50) double far) {
        ErrorSummary summary = summary(List.of(-far, far, 0.0, 0.1, -0.1, far));
        assertThat(summary.raw().within().get(3).eyes()).isEqualTo(3);
        assertThat(summary.zeroed().medianAbsolute().value()).isPositive();
    }
}
