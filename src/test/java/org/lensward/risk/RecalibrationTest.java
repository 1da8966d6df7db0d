package org.lensward.risk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.stream.DoubleStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.eye.Measured;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/** The model's baseline against a unit's own count. Calibration in the large; common practice of clinical prediction, value from memory. */
class RecalibrationTest {

    private static double risk(RiskPolicy policy) {
        Candidate candidate = Candidate.reference().age(77);
        return new RuptureModel(policy)
                .assess(
                        candidate.person(),
                        candidate.eye(),
                        Candidate.OPERATION,
                        candidate.surgeon().map(grade -> new Measured<>(grade, Candidate.PATIENT)))
                .probability()
                .value();
    }

    @Test
    void a_unit_that_has_not_counted_keeps_the_published_figure() {
        assertThat(Risks.policy().isRecalibrated()).isFalse();
        // 1.42 x 0.0075 / 0.9925
        assertThat(risk(Risks.policy())).isCloseTo(0.010650 / (1.010650 - 0.0075), within(1e-4));
    }

    @Test
    void a_unit_with_half_the_odds_has_half_the_odds_for_every_eye() {
        RiskPolicy policy = Risks.recalibrated(0.01, 0.02);
        double published = risk(Risks.policy());
        double own = risk(policy);
        double halved = (0.01 / 0.99) / (0.02 / 0.98);
        assertThat(policy.isRecalibrated()).isTrue();
        assertThat(own / (1 - own)).isCloseTo(published / (1 - published) * halved, within(1e-12));
    }

    /** The definition itself: at the fitted baseline the model expects what was observed. */
    @Property(tries = 200)
    void at_the_fitted_baseline_the_expected_ruptures_are_those_observed(
            @ForAll @Size(min = 20, max = 200) List<@DoubleRange(min = 1, max = 60) Double> ratios,
            @ForAll @IntRange(min = 1, max = 10) int ruptures) {
        Probability baseline =
                Recalibration.baseline(ratios.stream().map(PureNumber::of).toList(), ruptures);
        double odds = baseline.value() / (1 - baseline.value());
        double expected = ratios.stream()
                .flatMapToDouble(ratio -> DoubleStream.of(ratio * odds / (1 + ratio * odds)))
                .sum();
        assertThat(expected).isCloseTo(ruptures, within(1e-6));
    }

    @Test
    void for_a_thousand_like_eyes_the_baseline_is_the_plain_rate() {
        List<PureNumber> alike = Collections.nCopies(1000, PureNumber.of(1));
        assertThat(Recalibration.baseline(alike, 17).value()).isCloseTo(0.017, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 3, 4})
    void no_rupture_or_nothing_else_fits_no_baseline(long ruptures) {
        List<PureNumber> three = Collections.nCopies(3, PureNumber.of(1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Recalibration.baseline(three, ruptures))
                .withMessageContaining("in 3 operations");
    }
}
