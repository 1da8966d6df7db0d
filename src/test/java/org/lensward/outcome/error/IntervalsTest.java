package org.lensward.outcome.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.stat.interval.ClopperPearsonInterval;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.junit.jupiter.api.Test;
import org.lensward.outcome.Interval;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;

/** Intervals of shares against those of Commons Math, which reach theirs by the F distribution; of deviations by their coverage. */
class IntervalsTest {

    private static final Probability CONFIDENCE = Probability.of(0.95);

    @Property(tries = 200)
    void shares_have_the_exact_interval(
            @ForAll @IntRange(min = 1, max = 3000) int all, @ForAll @IntRange(min = 0, max = 1000) int permille) {
        int some = (int) ((long) all * permille / 1000);
        Interval<Probability> exact = Intervals.exact(some, all, CONFIDENCE);
        Interval<Probability> score = Intervals.score(some, all, CONFIDENCE);
        ConfidenceInterval wilson = new WilsonScoreInterval().createInterval(all, some, 0.95);
        assertThat(score.low().value()).isCloseTo(wilson.getLowerBound(), within(1e-8));
        assertThat(score.high().value()).isCloseTo(wilson.getUpperBound(), within(1e-8));
        if (some > 0 && some < all) {
            ConfidenceInterval theirs = new ClopperPearsonInterval().createInterval(all, some, 0.95);
            assertThat(exact.low().value()).isCloseTo(theirs.getLowerBound(), within(1e-7));
            assertThat(exact.high().value()).isCloseTo(theirs.getUpperBound(), within(1e-7));
        }
    }

    /** None of n: the upper end is 1 - 0.025^(1/n), and the other way round. */
    @Test
    void none_and_all_have_one_sided_intervals() {
        Interval<Probability> none = Intervals.exact(0, 20, CONFIDENCE);
        assertThat(none.low().value()).isZero();
        assertThat(none.high().value()).isCloseTo(1 - Math.pow(0.025, 1 / 20.0), within(1e-8));
        Interval<Probability> all = Intervals.exact(20, 20, CONFIDENCE);
        assertThat(all.high().value()).isEqualTo(1);
        assertThat(all.low().value()).isCloseTo(Math.pow(0.025, 1 / 20.0), within(1e-8));
    }

    /** 2,000 samples: 95 % give or take four standard errors of a share, 2 %, and a little for what the method itself is off. */
    @Test
    void deviations_are_covered_with_light_and_with_heavy_tails() {
        RandomGenerator random = new Well19937c(11);
        assertThat(coverage(random, 1, false)).isBetween(0.92, 0.98);
        assertThat(coverage(random, Math.sqrt(0.9 + 0.1 * 9), true)).isBetween(0.90, 0.98);
    }

    /** One error in ten from a distribution three times as wide. */
    private static double coverage(RandomGenerator random, double truth, boolean heavy) {
        int held = 0;
        int samples = 2000;
        for (int sample = 0; sample < samples; sample++) {
            Moments moments = new Moments();
            ErrorHistogram histogram = new ErrorHistogram();
            for (int eye = 0; eye < 200; eye++) {
                double error = random.nextGaussian() * (heavy && random.nextInt(10) == 0 ? 3 : 1);
                moments.add(error);
                histogram.add(error);
            }
            held += Intervals.ofDeviation(moments, histogram, CONFIDENCE).holds(Dioptres.of(truth)) ? 1 : 0;
        }
        return (double) held / samples;
    }

    @Test
    void four_eyes_say_nothing_of_a_deviation() {
        Moments moments = new Moments();
        for (int eye = 0; eye < 4; eye++) {
            moments.add(eye);
        }
        assertThatThrownBy(() -> Intervals.ofDeviation(moments, new ErrorHistogram(), CONFIDENCE))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
