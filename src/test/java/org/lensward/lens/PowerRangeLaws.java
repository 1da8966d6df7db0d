package org.lensward.lens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.lensward.quantity.Dioptres;

/** The powers of a range are the decimals that labels print; the decimal arithmetic of java.math is the judge. */
class PowerRangeLaws {

    @Provide
    Arbitrary<String> steps() {
        return Arbitraries.of("0.05", "0.1", "0.125", "0.25", "0.3", "0.5", "1", "1.5");
    }

    private static List<BigDecimal> powers(BigDecimal lowest, BigDecimal highest, String step) {
        return Lenses.range(lowest.doubleValue(), highest.doubleValue(), Double.parseDouble(step)).powers().stream()
                .map(power -> new BigDecimal(Double.toString(power.value())))
                .toList();
    }

    @Property
    void the_nth_power_is_the_lowest_and_n_steps_to_the_last_digit(
            @ForAll("steps") String step,
            @ForAll @IntRange(min = -100, max = 300) int tenths,
            @ForAll @IntRange(max = 120) int count) {
        BigDecimal lowest = BigDecimal.valueOf(tenths, 1);
        BigDecimal highest = lowest.add(new BigDecimal(step).multiply(BigDecimal.valueOf(count)));
        List<BigDecimal> powers = powers(lowest, highest, step);
        assertThat(powers).hasSize(count + 1);
        for (int n = 0; n <= count; n++) {
            assertThat(powers.get(n))
                    .isEqualByComparingTo(lowest.add(new BigDecimal(step).multiply(BigDecimal.valueOf(n))));
        }
    }

    @Property
    void a_last_step_that_is_cut_short_is_not_made(
            @ForAll("steps") String step, @ForAll @IntRange(max = 60) int count) {
        BigDecimal whole = new BigDecimal(step).multiply(BigDecimal.valueOf(count));
        BigDecimal cut = whole.add(new BigDecimal(step)).subtract(new BigDecimal("0.01"));
        assertThat(powers(BigDecimal.TEN, BigDecimal.TEN.add(cut), step))
                .isEqualTo(powers(BigDecimal.TEN, BigDecimal.TEN.add(whole), step));
    }

    @Property
    void two_ranges_that_meet_share_their_common_powers(@ForAll @IntRange(min = 11, max = 29) int middle) {
        LensModel model =
                Lenses.madeIn(Lenses.bag(), Lenses.range(10, middle, 0.5), Lenses.range(middle - 0.9, 30, 0.1));
        assertThat(model.powers()).doesNotHaveDuplicates().isSorted().contains(Dioptres.of(middle));
        assertThat(model.powers().get(0)).isEqualTo(Dioptres.of(10));
    }

    @Example
    void one_power_is_a_range() {
        assertThat(Lenses.range(22, 22, 0.5).powers()).containsExactly(Dioptres.of(22));
    }

    @Example
    void a_range_goes_up_in_steps() {
        assertThatIllegalArgumentException().isThrownBy(() -> Lenses.range(10, 9, 0.5));
        assertThatIllegalArgumentException().isThrownBy(() -> Lenses.range(9, 10, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> Lenses.range(9, 10, -0.5));
    }
}
