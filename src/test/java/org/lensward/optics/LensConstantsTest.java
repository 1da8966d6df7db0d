package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

class LensConstantsTest {

    private static LensConstants only(Optional<PureNumber> a, Optional<Millimetres> personalisedAcd) {
        return LensConstants.published(a, Optional.empty(), personalisedAcd, Optional.empty());
    }

    @Nested
    class From_an_a_constant_alone {

        private final LensConstants converted = LensConstants.ofAConstant(PureNumber.of(118.4));

        /** 118.4, 5.20 mm and 1.45 mm stand side by side on lens labels (value from memory), printed to 0.01 mm. */
        @Test
        void the_others_are_what_lens_labels_print_beside_it() {
            assertThat(converted.personalisedAcd().orElseThrow().value().value())
                    .isCloseTo(5.20, within(0.005));
            assertThat(converted.surgeonFactor().orElseThrow().value().value()).isCloseTo(1.45, within(0.005));
        }

        /** Haigis' standard: a0 = ACD constant - 0.4 x 3.37 - 0.1 x 23.39, so the mean eye keeps SRK's ACD constant (Haigis 2000). */
        @Test
        void haigis_puts_the_lens_of_the_mean_eye_at_the_acd_constant() {
            HaigisConstants haigis = converted.haigis().orElseThrow().value();
            double ofMeanEye = haigis.a0().value()
                    + haigis.a1().value() * 3.37
                    + haigis.a2().value() * 23.39;
            assertThat(ofMeanEye).isCloseTo(0.62467 * 118.4 - 68.747, within(1e-9));
        }

        @ParameterizedTest
        @EnumSource
        void every_formula_has_its_constant_and_all_without_an_a_constant_a_converted_one(FormulaName name) {
            assertThat(converted.has(name)).isTrue();
            boolean ofItsOwn =
                    switch (name) {
                        case SRK_T, T2, SHAMMAS_MYOPIC, SHAMMAS_HYPEROPIC -> true;
                        case HOLLADAY_1, HOFFER_Q, HAIGIS, HAIGIS_L -> false;
                    };
            assertThat(converted.convertedFor(name)).isEqualTo(!ofItsOwn);
        }
    }

    @Nested
    class Published_constants {

        @Test
        void are_kept_and_only_the_gaps_are_filled() {
            LensConstants some = only(Optional.of(PureNumber.of(118.4)), Optional.of(Millimetres.of(5.61)));
            assertThat(some.completed().personalisedAcd()).isEqualTo(some.personalisedAcd());
            assertThat(some.completed().convertedFor(FormulaName.HOFFER_Q)).isFalse();
            assertThat(some.completed().convertedFor(FormulaName.HOLLADAY_1)).isTrue();
        }

        @Test
        void without_an_a_constant_leave_the_gaps_open() {
            LensConstants some = only(Optional.empty(), Optional.of(Millimetres.of(5.61)));
            assertThat(some.completed()).isEqualTo(some);
            for (FormulaName name : FormulaName.values()) {
                assertThat(some.has(name)).isEqualTo(name == FormulaName.HOFFER_Q);
                assertThat(some.convertedFor(name)).isFalse();
            }
        }

        @Test
        void are_empty_only_if_none_is_known() {
            assertThat(only(Optional.empty(), Optional.empty()).isEmpty()).isTrue();
            assertThat(only(Optional.empty(), Optional.of(Millimetres.of(5.61))).isEmpty())
                    .isFalse();
        }

        @ParameterizedTest
        @EnumSource
        void are_not_converted(FormulaName name) {
            assertThat(Eyes.CONSTANTS.has(name)).isTrue();
            assertThat(Eyes.CONSTANTS.convertedFor(name)).isFalse();
            assertThat(Eyes.CONSTANTS.completed()).isEqualTo(Eyes.CONSTANTS);
        }
    }

    @Test
    void an_eye_has_a_length_and_a_curvature() {
        assertThatIllegalArgumentException().isThrownBy(() -> Eyes.shape(0, 43));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new EyeShape(Millimetres.of(23), Millimetres.of(0), Optional.empty()));
    }
}
