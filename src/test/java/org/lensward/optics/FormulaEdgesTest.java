package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.ANTERIOR_CHAMBER_DEPTH_MISSING;
import static org.lensward.finding.FindingCode.CORNEAL_HEIGHT_CUSP;
import static org.lensward.finding.FindingCode.FORMULA_BEYOND_CHECKED_RANGE;
import static org.lensward.finding.FindingCode.NO_LENS_POSITION;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Millimetres;

/** Where a formula steps, stops or is stretched; each edge is documented at its formula. */
class FormulaEdgesTest {

    private static Outcome<ThinEye> see(FormulaName name, EyeShape shape) {
        return Formulas.named(name).see(shape, Eyes.CONSTANTS, Eyes.LENGTH);
    }

    private static List<FindingCode> codes(FormulaName name, EyeShape shape) {
        return see(name, shape).findings().stream().map(Finding::code).toList();
    }

    private static double position(FormulaName name, double length, double power) {
        return Eyes.see(Formulas.named(name), Eyes.shape(length, power))
                .lensPosition()
                .value();
    }

    @Nested
    class Srk_t {

        /** K 49: r = 6.8878; the chord reaches the diameter at LCOR = (2 r + 5.41 - 4.802) / 0.58412 = 24.624, AL 24.96. */
        @Test
        void reports_the_cusp_of_a_steep_long_eye() {
            assertThat(codes(FormulaName.SRK_T, Eyes.shape(24.95, 49))).isEmpty();
            assertThat(codes(FormulaName.SRK_T, Eyes.shape(24.97, 49))).containsExactly(CORNEAL_HEIGHT_CUSP);
        }

        @Test
        void holds_its_height_at_the_radius_beyond_the_cusp() {
            double offset = 0.62467 * 118.4 - 68.747 - 3.336;
            assertThat(position(FormulaName.SRK_T, 28, 49)).isCloseTo(337.5 / 49 + offset, within(1e-12));
        }

        @Test
        void reports_the_cusp_beside_the_range_it_is_stretched_beyond() {
            assertThat(codes(FormulaName.SRK_T, Eyes.shape(33, 49)))
                    .containsExactly(FORMULA_BEYOND_CHECKED_RANGE, CORNEAL_HEIGHT_CUSP);
        }

        /**
         * -3.446 + 1.716 x 24.2 - 0.0237 x 24.2^2 = 24.201532, against 24.2: the width steps by 0.000895 mm, and the height by
         * Cw / (4 sqrt(r^2 - Cw^2 / 4)) of that: 0.00068 mm at K 43.5.
         */
        @Test
        void steps_back_by_less_than_a_thousandth_of_a_millimetre_at_24_2() {
            double step =
                    position(FormulaName.SRK_T, Math.nextUp(24.2), 43.5) - position(FormulaName.SRK_T, 24.2, 43.5);
            assertThat(step).isCloseTo(0.00068, within(5e-6));
        }

        @Test
        void has_no_cusp_in_t2() {
            assertThat(codes(FormulaName.T2, Eyes.shape(28, 49))).isEmpty();
        }
    }

    @Nested
    class Hoffer_q {

        /** 0.1 x 0.5^2 (tan 2.5 deg + tan 0.025 deg) = 0.0011024 mm, from tables of tangents. */
        @Test
        void steps_forward_at_23_millimetres() {
            double step =
                    position(FormulaName.HOFFER_Q, 23, 44) - position(FormulaName.HOFFER_Q, Math.nextUp(23.0), 44);
            assertThat(step).isCloseTo(0.0011024, within(5e-8));
        }

        @ParameterizedTest
        @CsvSource({"31, 33", "18.5, 17"})
        void holds_the_length_within_its_range(double edge, double beyond) {
            assertThat(position(FormulaName.HOFFER_Q, beyond, 44)).isEqualTo(position(FormulaName.HOFFER_Q, edge, 44));
        }
    }

    @Nested
    class Holladay_1 {

        /** 13.5 x 23.45 / 12.5 = 25.326 mm. */
        @Test
        void caps_the_anterior_segment_from_25_33_millimetres() {
            double cap = position(FormulaName.HOLLADAY_1, 25.326, 43);
            assertThat(position(FormulaName.HOLLADAY_1, 25.33, 43)).isEqualTo(cap);
            assertThat(position(FormulaName.HOLLADAY_1, 30, 43)).isEqualTo(cap);
            assertThat(position(FormulaName.HOLLADAY_1, 25.32, 43)).isLessThan(cap);
        }

        /** 337.5 / 7 = 48.21 D. */
        @Test
        void takes_no_radius_below_seven_millimetres() {
            double held = position(FormulaName.HOLLADAY_1, 23.45, 337.5 / 7);
            assertThat(position(FormulaName.HOLLADAY_1, 23.45, 49)).isEqualTo(held);
            assertThat(position(FormulaName.HOLLADAY_1, 23.45, 48)).isLessThan(held);
        }
    }

    @Nested
    class Haigis_without_a_chamber_depth {

        private final EyeShape shape = new EyeShape(Millimetres.of(23.5), Millimetres.of(7.8), Optional.empty());

        @Test
        void is_withheld_and_says_why() {
            assertThat(see(FormulaName.HAIGIS, shape).value()).isEmpty();
            assertThat(codes(FormulaName.HAIGIS, shape)).containsExactly(ANTERIOR_CHAMBER_DEPTH_MISSING);
        }

        @ParameterizedTest
        @EnumSource(mode = EnumSource.Mode.MATCH_NONE, names = "HAIGIS.*")
        void keeps_no_other_formula_back(FormulaName name) {
            assertThat(see(name, shape).value()).isPresent();
            assertThat(see(name, shape).findings()).isEmpty();
        }
    }

    @Nested
    class Any_formula {

        @ParameterizedTest
        @EnumSource
        void is_withheld_where_it_puts_the_lens_before_the_eye(FormulaName name) {
            Outcome<ThinEye> outcome =
                    Formulas.named(name).see(Eyes.shape(23.5, 43), Eyes.constants(100, -9, -9, -9), Eyes.LENGTH);
            assertThat(outcome.value()).isEmpty();
            assertThat(outcome.findings()).extracting(Finding::code).containsExactly(NO_LENS_POSITION);
            assertThat(outcome.findings().get(0).evidence()).containsExactly(Eyes.LENGTH);
        }

        @ParameterizedTest
        @EnumSource
        void is_withheld_where_it_puts_the_lens_behind_the_retina(FormulaName name) {
            Outcome<ThinEye> outcome =
                    Formulas.named(name).see(Eyes.shape(23.5, 43), Eyes.constants(160, 25, 25, 25), Eyes.LENGTH);
            assertThat(outcome.value()).isEmpty();
            assertThat(outcome.findings()).extracting(Finding::code).containsExactly(NO_LENS_POSITION);
        }

        @ParameterizedTest
        @EnumSource
        void is_at_home_up_to_the_edges_of_the_range_it_was_checked_in(FormulaName name) {
            for (double[] eye : new double[][] {{20, 38}, {20, 49}, {32, 38}, {32, 43}, {23.5, 43}}) {
                assertThat(codes(name, Eyes.shape(eye[0], eye[1])))
                        .as("axial length %s, K %s", eye[0], eye[1])
                        .isEmpty();
            }
        }

        @ParameterizedTest
        @EnumSource
        void says_so_when_it_is_stretched_and_still_answers(FormulaName name) {
            for (double[] eye : new double[][] {{19.99, 43}, {32.01, 43}, {23.5, 37.99}, {23.5, 49.01}}) {
                assertThat(codes(name, Eyes.shape(eye[0], eye[1])))
                        .as("axial length %s, K %s", eye[0], eye[1])
                        .containsExactly(FORMULA_BEYOND_CHECKED_RANGE);
                assertThat(see(name, Eyes.shape(eye[0], eye[1])).value()).isPresent();
            }
        }
    }
}
