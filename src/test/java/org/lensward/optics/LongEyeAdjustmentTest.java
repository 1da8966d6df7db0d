package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.optics.LongEyeAdjustment.WANG_KOCH_2011;
import static org.lensward.optics.LongEyeAdjustment.WANG_KOCH_2018;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.quantity.Millimetres;

class LongEyeAdjustmentTest {

    /** a AL + b worked by hand; coefficients of both papers from memory (see LongEyeAdjustment). */
    @ParameterizedTest
    @CsvSource({
        "WANG_KOCH_2011, HOLLADAY_1, 28, 27.4755",
        "WANG_KOCH_2011, SRK_T,      28, 27.6454",
        "WANG_KOCH_2011, HOFFER_Q,   28, 27.4634",
        "WANG_KOCH_2011, HAIGIS,     28, 27.5628",
        "WANG_KOCH_2018, HOLLADAY_1, 28, 27.5773",
        "WANG_KOCH_2018, SRK_T,      28, 27.7457",
    })
    void above_its_threshold_a_length_follows_the_published_line(
            LongEyeAdjustment adjustment, FormulaName formula, double length, double adjusted) {
        assertThat(adjustment
                        .adjust(formula, Millimetres.of(length))
                        .orElseThrow()
                        .value())
                .isCloseTo(adjusted, within(5e-5));
    }

    /** 3.7222 / (1 - 0.8544) = 25.565 mm, where SRK/T's line crosses the measured length. */
    @Test
    void srk_t_of_2011_stays_as_measured_until_its_line_shortens_the_eye() {
        assertThat(WANG_KOCH_2011.adjust(FormulaName.SRK_T, Millimetres.of(25.56)))
                .isEmpty();
        assertThat(WANG_KOCH_2011.adjust(FormulaName.SRK_T, Millimetres.of(25.57)))
                .isPresent();
    }

    @Test
    void a_millimetre_below_its_threshold_an_eye_is_as_measured() {
        assertThat(WANG_KOCH_2011.adjust(FormulaName.HAIGIS, Millimetres.of(24)))
                .isEmpty();
        assertThat(WANG_KOCH_2018.adjust(FormulaName.SRK_T, Millimetres.of(26))).isEmpty();
        assertThat(WANG_KOCH_2018.threshold(FormulaName.SRK_T)).contains(Millimetres.of(27));
    }

    @Test
    void a_formula_outside_the_papers_is_left_alone() {
        assertThat(WANG_KOCH_2011.adjust(FormulaName.T2, Millimetres.of(30))).isEmpty();
        assertThat(WANG_KOCH_2018.threshold(FormulaName.HAIGIS)).isEmpty();
    }
}
