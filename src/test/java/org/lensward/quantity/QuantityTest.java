package org.lensward.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTest {

    @Nested
    class A_text {

        @Test
        void is_a_number_a_space_and_the_unit() {
            assertThat(Millimetres.parse("23.45 mm")).isEqualTo(Millimetres.of(23.45));
            assertThat(Dioptres.parse(" -0.5 D ")).isEqualTo(Dioptres.of(-0.5));
            assertThat(PureNumber.parse("118.4 1")).isEqualTo(PureNumber.of(118.4));
        }

        @ParameterizedTest
        @ValueSource(strings = {"", "mm", " mm", "23.45", "23.45mm", "23,45 mm", "23.45 cm", "NaN mm", "Infinity mm"})
        void that_is_anything_else_is_refused(String text) {
            assertThatIllegalArgumentException().isThrownBy(() -> Millimetres.parse(text));
        }
    }

    @Nested
    class A_probability {

        @Test
        void reaches_from_nought_to_one() {
            assertThat(Probability.of(0).value()).isZero();
            assertThat(Probability.of(1).value()).isEqualTo(1);
        }

        @Test
        void goes_no_further() {
            assertThatIllegalArgumentException().isThrownBy(() -> Probability.of(-Double.MIN_VALUE));
            assertThatIllegalArgumentException().isThrownBy(() -> Probability.of(Math.nextUp(1.0)));
        }

        @Test
        void is_ordered_by_size() {
            assertThat(Probability.of(0.2)).isLessThan(Probability.of(0.3));
        }
    }

    @Nested
    class A_refractive_index {

        @Test
        void lies_between_one_and_two() {
            assertThat(RefractiveIndex.of(Math.nextUp(1.0))).isLessThan(RefractiveIndex.of(Math.nextDown(2.0)));
            assertThatIllegalArgumentException().isThrownBy(() -> RefractiveIndex.of(1));
            assertThatIllegalArgumentException().isThrownBy(() -> RefractiveIndex.of(2));
        }
    }

    @Nested
    class Lengths_and_powers {

        @Test
        void add_and_subtract() {
            assertThat(Dioptres.of(20).plus(Dioptres.of(1.5))).isEqualTo(Dioptres.of(21.5));
            assertThat(Dioptres.of(20).minus(Dioptres.of(1.5))).isEqualTo(Dioptres.of(18.5));
            assertThat(Millimetres.of(5).plus(Millimetres.of(-0.5))).isEqualTo(Millimetres.of(4.5));
            assertThat(Millimetres.of(5).minus(Millimetres.of(0.5))).isEqualTo(Millimetres.of(4.5));
        }

        @Test
        void are_as_far_apart_one_way_as_the_other() {
            assertThat(Dioptres.of(1).distanceTo(Dioptres.of(-2))).isEqualTo(Dioptres.of(3));
            assertThat(Dioptres.of(-2).distanceTo(Dioptres.of(1))).isEqualTo(Dioptres.of(3));
            assertThat(Millimetres.of(22).distanceTo(Millimetres.of(25))).isEqualTo(Millimetres.of(3));
            assertThat(Millimetres.of(25).distanceTo(Millimetres.of(22))).isEqualTo(Millimetres.of(3));
        }

        @Test
        void do_not_add_up_beyond_what_is_finite() {
            Dioptres huge = Dioptres.of(Double.MAX_VALUE);
            assertThatIllegalArgumentException().isThrownBy(() -> huge.plus(huge));
        }
    }
}
