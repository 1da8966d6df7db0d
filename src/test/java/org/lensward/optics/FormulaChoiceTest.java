package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.lensward.optics.FormulaName.HAIGIS;
import static org.lensward.optics.FormulaName.HOFFER_Q;
import static org.lensward.optics.FormulaName.SRK_T;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lensward.quantity.Millimetres;

/** Bands of NICE NG77, value from memory. */
class FormulaChoiceTest {

    private final FormulaChoice nice = FormulaChoice.nice();

    @Test
    void a_short_eye_prefers_haigis_and_falls_back_on_hoffer_q() {
        assertThat(nice.choose(Millimetres.of(21.99), List.of(SRK_T, HOFFER_Q, HAIGIS)))
                .contains(HAIGIS);
        assertThat(nice.choose(Millimetres.of(21.99), List.of(SRK_T, HOFFER_Q))).contains(HOFFER_Q);
    }

    @Test
    void the_middle_band_holds_both_its_ends() {
        assertThat(nice.choose(Millimetres.of(22), List.of(SRK_T, HAIGIS))).contains(SRK_T);
        assertThat(nice.choose(Millimetres.of(26), List.of(SRK_T, HAIGIS))).contains(SRK_T);
        assertThat(nice.choose(Millimetres.of(26), List.of(HAIGIS))).isEmpty();
    }

    @Test
    void a_long_eye_prefers_haigis() {
        assertThat(nice.choose(Millimetres.of(26.01), List.of(SRK_T, HAIGIS))).contains(HAIGIS);
    }

    @Test
    void a_band_has_a_range_and_a_source() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new FormulaBand(Millimetres.of(22), Millimetres.of(22), List.of(SRK_T), "x"));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new FormulaBand(Millimetres.of(22), Millimetres.of(23), List.of(), "x"));
    }
}
