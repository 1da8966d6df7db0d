package org.lensward.optics.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.optics.Spread;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

class LandingTest {

    /** Against the normal distribution of Commons Math. */
    @ParameterizedTest
    @CsvSource({"0.45, 0.0", "0.45, 0.2", "0.6, -0.4", "1.2, 1.0"})
    void the_chance_to_land_is_the_normal_distributions(double deviation, double offset) {
        assertThat(Landing.within(Dioptres.of(0.5), Dioptres.of(offset), Dioptres.of(deviation))
                        .value())
                .isCloseTo(new NormalDistribution(offset, deviation).probability(-0.5, 0.5), within(1e-12));
    }

    /** 68.27 % within one deviation, 95.45 % within two: any table of the normal distribution. */
    @ParameterizedTest
    @CsvSource({"1, 0.6827", "2, 0.9545"})
    void the_chance_is_the_tables(double deviations, double chance) {
        assertThat(Landing.within(Dioptres.of(0.4 * deviations), Dioptres.of(0), Dioptres.of(0.4))
                        .value())
                .isCloseTo(chance, within(5e-5));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/iso-11979-2.csv", useHeadersInDisplayName = true)
    void a_label_holds_within_the_standards_limit(double label, double limit) {
        assertThat(LabelTolerance.ofPower(Dioptres.of(label)).value()).isEqualTo(limit);
        assertThat(LabelTolerance.spread(Dioptres.of(label)).deviation().value())
                .isCloseTo(limit / 1.7320508, within(1e-7));
    }

    /** ISO 11979-2, value from memory. */
    @ParameterizedTest
    @CsvSource({"1.0, 0.3", "2.5, 0.3", "3.0, 0.4", "4.5, 0.4", "5.0, 0.5"})
    void a_cylinder_holds_within_the_standards_limit(double label, double limit) {
        assertThat(LabelTolerance.ofCylinder(Dioptres.of(label)).value()).isEqualTo(limit);
        assertThat(LabelTolerance.AXIS).isEqualTo(Degrees.of(5));
    }

    @Test
    void a_spread_is_nought_or_more_and_has_a_source() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Spread<>(Dioptres.of(-0.1), "test"));
        assertThatIllegalArgumentException().isThrownBy(() -> new Spread<>(Dioptres.of(0.1), " "));
    }
}
