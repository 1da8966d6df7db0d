package org.lensward.eye;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** What holds of the gates for every pair of eyes. */
class QualityGatesLaws {

    private static final LocalDate OPERATION = LocalDate.of(2026, 3, 16);

    private final QualityGates gates = new QualityGates(Policies.standard());

    private List<Finding> judge(Specimen eye, Specimen fellow) {
        return gates.judge(eye.biometry(), eye.eye(), fellow.eye(), OPERATION);
    }

    private static Specimen eye(Laterality side, int monthsOld, double length, double power) {
        return Specimen.ordinary(side, OPERATION.minusMonths(monthsOld))
                .length(length)
                .powers(power, power + 1);
    }

    @Property
    void right_and_left_are_judged_alike(
            @ForAll @IntRange(max = 40) int monthsOld,
            @ForAll @DoubleRange(min = 18, max = 34) double length,
            @ForAll @DoubleRange(min = 36, max = 52) double power,
            @ForAll @DoubleRange(min = 18, max = 34) double fellowLength) {
        List<Finding> asRight = judge(
                eye(Laterality.RIGHT, monthsOld, length, power), eye(Laterality.LEFT, monthsOld, fellowLength, 43));
        List<Finding> asLeft = judge(
                eye(Laterality.LEFT, monthsOld, length, power), eye(Laterality.RIGHT, monthsOld, fellowLength, 43));
        assertThat(asLeft).isEqualTo(asRight);
    }

    @Property
    void fresh_biometry_of_an_eye_never_operated_on_is_doubted_but_not_refused(
            @ForAll @IntRange(max = 24) int monthsOld,
            @ForAll @DoubleRange(min = 18, max = 34) double length,
            @ForAll @DoubleRange(min = 36, max = 52) double power) {
        List<Finding> found =
                judge(eye(Laterality.RIGHT, monthsOld, length, power), eye(Laterality.LEFT, monthsOld, 23.5, 43));
        assertThat(Finding.withhold(found.stream())).isFalse();
    }

    @Property
    void what_two_eyes_differ_by_is_said_the_same_of_either(
            @ForAll @DoubleRange(min = 22, max = 26) double length,
            @ForAll @DoubleRange(min = 22, max = 26) double fellowLength,
            @ForAll @DoubleRange(min = 41, max = 46) double power,
            @ForAll @DoubleRange(min = 41, max = 46) double fellowPower) {
        Specimen eye = eye(Laterality.RIGHT, 1, length, power);
        Specimen fellow = eye(Laterality.LEFT, 1, fellowLength, fellowPower);
        assertThat(betweenEyes(judge(eye, fellow))).isEqualTo(betweenEyes(judge(fellow, eye)));
    }

    /** Instruments print hundredths; the gates' differences of two such numbers are not exact in binary. */
    @Property
    void a_difference_of_exactly_the_limit_is_never_above_it(
            @ForAll @IntRange(min = 2130, max = 2590) int length, @ForAll @IntRange(min = 4230, max = 4460) int power) {
        Specimen eye = eye(Laterality.RIGHT, 1, length / 100.0, 43).powers(power / 100.0, (power + 250) / 100.0);
        Specimen fellow =
                eye(Laterality.LEFT, 1, (length + 70) / 100.0, 43).powers((power - 90) / 100.0, (power + 160) / 100.0);
        assertThat(judge(eye, fellow)).extracting(Finding::code).containsExactly(FindingCode.CORNEAL_ASTIGMATISM_TORIC);
    }

    @Property
    void astigmatism_of_exactly_one_dioptre_is_always_worth_a_word(
            @ForAll @IntRange(min = 4100, max = 4600) int power) {
        Specimen eye = eye(Laterality.RIGHT, 1, 23.5, 43).powers(power / 100.0, (power + 100) / 100.0);
        Specimen fellow = eye(Laterality.LEFT, 1, 23.5, 43).powers(power / 100.0, power / 100.0);
        assertThat(judge(eye, fellow)).extracting(Finding::code).contains(FindingCode.CORNEAL_ASTIGMATISM_TORIC);
    }

    private static List<String> betweenEyes(List<Finding> found) {
        return found.stream()
                .filter(finding -> finding.code().name().startsWith("EYES_DIFFER"))
                .map(Finding::message)
                .toList();
    }
}
