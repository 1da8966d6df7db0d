package org.lensward.eye;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.RefractiveIndex;

class KeratometryTest {

    /** Representation error of a few double operations on numbers below 100. */
    private static final double EXACT = 1e-12;

    @Nested
    class Given_the_standard_index {

        /** r = 337.5 / K: the calibration of keratometers, 45.00 D at 7.5 mm; the others by long division. */
        @ParameterizedTest
        @CsvSource({"45.00, 7.5", "33.75, 10", "43.27, 7.799861", "50.00, 6.75"})
        void a_power_is_a_radius(double power, double radius) {
            Keratometry cornea = Keratometry.ofPowers(
                    Dioptres.of(power), Dioptres.of(power), Keratometry.STANDARD_INDEX, Optional.empty());
            assertThat(cornea.flatRadius().value()).isCloseTo(radius, within(5e-7));
            assertThat(cornea.meanRadius().value()).isCloseTo(radius, within(5e-7));
            assertThat(Keratometry.power(Millimetres.of(radius)).value()).isCloseTo(power, within(5e-6));
        }
    }

    @Nested
    class Given_another_index {

        /** 1000 (n - 1) / 7.5 for three indices that keratometers use; each is the same cornea. */
        @ParameterizedTest
        @CsvSource({"1.3375, 45.0", "1.3320, 44.266667", "1.3315, 44.2", "1.3360, 44.8"})
        void the_radius_is_the_same_and_the_power_is_restated_by_the_standard_index(double index, double shown) {
            Keratometry cornea = Keratometry.ofPowers(
                    Dioptres.of(shown), Dioptres.of(shown), RefractiveIndex.of(index), Optional.empty());
            assertThat(cornea.steepRadius().value()).isCloseTo(7.5, within(5e-7));
            assertThat(cornea.meanPower().value()).isCloseTo(45.0, within(5e-6));
        }
    }

    @Nested
    class Given_two_meridians {

        private final Keratometry cornea = Keratometry.ofPowers(
                Dioptres.of(42), Dioptres.of(44.5), Keratometry.STANDARD_INDEX, Optional.of(Degrees.of(80)));

        @Test
        void mean_power_is_midway_and_the_mean_radius_is_of_that_power() {
            assertThat(cornea.meanPower().value()).isCloseTo(43.25, within(EXACT));
            assertThat(cornea.meanRadius().value()).isCloseTo(337.5 / 43.25, within(EXACT));
        }

        @Test
        void astigmatism_is_the_steep_power_less_the_flat() {
            assertThat(cornea.flatPower().value()).isCloseTo(42, within(EXACT));
            assertThat(cornea.steepPower().value()).isCloseTo(44.5, within(EXACT));
            assertThat(cornea.astigmatism().value()).isCloseTo(2.5, within(EXACT));
        }

        /** Swapped labels leave it open to which meridian the axis belongs, so nothing is put right in silence. */
        @Test
        void the_flat_power_is_never_the_greater() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Keratometry.ofPowers(
                            Dioptres.of(44.5), Dioptres.of(42), Keratometry.STANDARD_INDEX, Optional.empty()));
        }

        @Test
        void the_flat_radius_is_never_the_shorter() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new Keratometry(Millimetres.of(7.5), Millimetres.of(7.6), Optional.empty()));
        }

        @Test
        void a_radius_is_positive() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new Keratometry(Millimetres.of(7.5), Millimetres.of(0), Optional.empty()));
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new Keratometry(Millimetres.of(-7), Millimetres.of(-8), Optional.empty()));
        }
    }
}
