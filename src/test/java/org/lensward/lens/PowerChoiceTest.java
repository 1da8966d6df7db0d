package org.lensward.lens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.POWER_NOT_MADE;
import static org.lensward.lens.TargetSide.HYPEROPIC;
import static org.lensward.lens.TargetSide.MYOPIC;
import static org.lensward.lens.TargetSide.NEAREST;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/** One labelled power for one eye; lenses are made from 6 to 30 D by 0.5 D. */
class PowerChoiceTest {

    /** The eye that this power makes emmetropic; position and cornea as in published/sulcus-elp-shift.csv. */
    private static FormulaView needing(double power) {
        double length = 5.20 + 1336 / (power + 1336 / (1336.0 / 43 - 5.20));
        return Lenses.view(new ThinEye(Millimetres.of(5.20), Millimetres.of(length), Dioptres.of(43)));
    }

    private static Outcome<Dioptres> choose(double needed, TargetSide side) {
        return PowerChoice.choose(Lenses.bag(), needing(needed), Dioptres.of(0), side);
    }

    @ParameterizedTest
    @CsvSource({
        "21.1, NEAREST, 21.0", "21.4, NEAREST, 21.5",
        "21.1, MYOPIC, 21.5", "21.4, MYOPIC, 21.5",
        "21.1, HYPEROPIC, 21.0", "21.4, HYPEROPIC, 21.0",
        "21.0, MYOPIC, 21.0", "21.0, HYPEROPIC, 21.0"
    })
    void more_power_leaves_the_eye_more_myopic(double needed, TargetSide side, double chosen) {
        assertThat(choose(needed, side).value()).contains(Dioptres.of(chosen));
    }

    @Nested
    class Given_a_need_at_the_end_of_the_powers_made {

        @ParameterizedTest
        @EnumSource
        void the_last_power_meets_it(TargetSide side) {
            assertThat(choose(30, side).value()).contains(Dioptres.of(30));
            assertThat(choose(6, side).value()).contains(Dioptres.of(6));
        }

        @ParameterizedTest
        @EnumSource
        void anything_past_it_is_withheld(TargetSide side) {
            assertThat(choose(30.1, side).value()).isEmpty();
            assertThat(choose(5.9, side).value()).isEmpty();
        }

        @Test
        void just_inside_it_the_side_decides() {
            assertThat(choose(29.9, MYOPIC).value()).contains(Dioptres.of(30));
            assertThat(choose(29.9, HYPEROPIC).value()).contains(Dioptres.of(29.5));
            assertThat(choose(6.1, HYPEROPIC).value()).contains(Dioptres.of(6));
            assertThat(choose(6.1, NEAREST).value()).contains(Dioptres.of(6));
        }

        @Test
        void the_finding_names_the_power_and_the_model() {
            Finding finding = choose(31.24, NEAREST).findings().get(0);
            assertThat(finding.code()).isEqualTo(POWER_NOT_MADE);
            assertThat(finding.message())
                    .isEqualTo("The power needed, 31.24 D, lies outside the powers made of the bag lens.");
            assertThat(finding.evidence()).containsExactly(Lenses.bag().evidence());
        }
    }

    @Test
    void a_gap_between_two_ranges_is_bridged_on_the_policys_side() {
        LensModel gap = Lenses.madeIn(Lenses.bag(), Lenses.range(10, 20, 0.5), Lenses.range(22, 30, 1));
        assertThat(PowerChoice.choose(gap, needing(20.5), Dioptres.of(0), MYOPIC)
                        .value())
                .contains(Dioptres.of(22));
        assertThat(PowerChoice.choose(gap, needing(20.5), Dioptres.of(0), NEAREST)
                        .value())
                .contains(Dioptres.of(20));
    }
}
