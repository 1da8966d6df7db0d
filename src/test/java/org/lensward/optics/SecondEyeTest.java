package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.EYES_WILL_DIFFER;
import static org.lensward.finding.FindingCode.RESULT_BEYOND_TARGET;
import static org.lensward.finding.FindingCode.SECOND_EYE_EXPECTED;
import static org.lensward.optics.OpticsSpecimen.SOMEWHERE;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Limit;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;

class SecondEyeTest {

    private static final Limit<Dioptres> MOST = new Limit<>(Dioptres.of(1), "test");

    /** First eye 0.60 D more hyperopic than predicted: half of it, +0.30 D, is expected of the second (fraction by memory). */
    @Test
    void half_of_the_first_eyes_error_is_expected_of_the_second() {
        var expected = SecondEye.half().expected(Dioptres.of(-0.20), new Measured<>(Dioptres.of(0.60), SOMEWHERE));
        assertThat(expected.value().orElseThrow().value()).isCloseTo(0.10, within(1e-12));
        assertThat(expected.findings()).extracting(Finding::code).containsExactly(SECOND_EYE_EXPECTED);
        assertThat(expected.findings().get(0).message()).contains("50 %", "-0.20 D", "+0.10 D");
    }

    @Property
    void aiming_so_that_the_expectation_is_the_target(
            @ForAll @DoubleRange(min = -5, max = 2) double target,
            @ForAll @DoubleRange(min = -2, max = 2) double error,
            @ForAll @DoubleRange(min = 0, max = 1) double fraction) {
        SecondEye second = new SecondEye(new Limit<>(PureNumber.of(fraction), "test"));
        Dioptres aim = second.aim(Dioptres.of(target), Dioptres.of(error));
        assertThat(second.expected(aim, new Measured<>(Dioptres.of(error), SOMEWHERE))
                        .value()
                        .orElseThrow()
                        .value())
                .isCloseTo(target, within(1e-12));
    }

    @Test
    void a_fraction_lies_between_nought_and_one() {
        assertThatIllegalArgumentException().isThrownBy(() -> new SecondEye(new Limit<>(PureNumber.of(1.1), "test")));
        assertThatIllegalArgumentException().isThrownBy(() -> new SecondEye(new Limit<>(PureNumber.of(-0.1), "test")));
    }

    @Test
    void a_hyperopic_result_or_a_wrong_sign_is_caught() {
        Measured<Dioptres> near = new Measured<>(Dioptres.of(-2.50), SOMEWHERE);
        assertThat(ResultGuards.beyondTarget(Dioptres.of(2.50), near, MOST))
                .map(Finding::code)
                .contains(RESULT_BEYOND_TARGET);
        assertThat(ResultGuards.beyondTarget(Dioptres.of(-2.30), near, MOST)).isEmpty();
    }

    @Test
    void eyes_that_will_differ_are_a_finding() {
        Measured<Dioptres> fellow = new Measured<>(Dioptres.of(-3), SOMEWHERE);
        assertThat(ResultGuards.anisometropia(Dioptres.of(-0.25), fellow, MOST))
                .map(Finding::code)
                .contains(EYES_WILL_DIFFER);
        assertThat(ResultGuards.anisometropia(Dioptres.of(-2.25), fellow, MOST)).isEmpty();
    }
}
