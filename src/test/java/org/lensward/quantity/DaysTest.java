package org.lensward.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DaysTest {

    /** Source: the Gregorian calendar; 2028 is a leap year. */
    @Test
    void are_counted_on_the_calendar() {
        assertThat(Days.of(7).before(LocalDate.of(2028, 3, 1))).isEqualTo(LocalDate.of(2028, 2, 23));
        assertThat(Days.of(1).after(LocalDate.of(2028, 2, 28))).isEqualTo(LocalDate.of(2028, 2, 29));
        assertThat(Days.of(0).after(LocalDate.of(2028, 2, 28))).isEqualTo(LocalDate.of(2028, 2, 28));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, 0.5, 36_526})
    void are_whole_not_negative_and_no_more_than_a_century(double days) {
        assertThatIllegalArgumentException().isThrownBy(() -> Days.of(days));
    }

    @Test
    void and_distances_are_ordered_by_size() {
        assertThat(Days.of(2)).isLessThan(Days.of(3));
        assertThat(Kilometres.of(2)).isLessThan(Kilometres.of(2.5));
    }

    @Test
    void a_distance_is_not_negative() {
        assertThatIllegalArgumentException().isThrownBy(() -> Kilometres.of(-0.1));
    }
}
