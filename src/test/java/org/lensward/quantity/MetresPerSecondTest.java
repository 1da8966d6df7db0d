package org.lensward.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;

class MetresPerSecondTest {

    @Test
    void a_velocity_reads_what_it_prints() {
        MetresPerSecond velocity = MetresPerSecond.of(1532);
        assertThat(velocity).hasToString("1532.0 m/s");
        assertThat(MetresPerSecond.parse(velocity.toString())).isEqualTo(velocity);
        assertThat(velocity).isGreaterThan(MetresPerSecond.of(980));
        assertThat(velocity.symbol()).isEqualTo("m/s");
    }

    @Test
    void sound_moves() {
        assertThatIllegalArgumentException().isThrownBy(() -> MetresPerSecond.of(0));
        assertThatIllegalArgumentException().isThrownBy(() -> MetresPerSecond.of(Double.NaN));
    }
}
