package org.lensward.lens;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/** The chosen power against every other labelled power, tried one by one. */
class PowerChoiceLaws {

    /** Dioptres; far below any step, far above rounding. */
    private static final double HAIR = 1e-6;

    private static final List<Dioptres> MADE = Lenses.bag().powers();

    private static ThinEye eye(double length, double cornea) {
        return new ThinEye(Millimetres.of(5.2), Millimetres.of(length), Dioptres.of(cornea));
    }

    private static Outcome<Dioptres> choose(ThinEye eye, double target, TargetSide side) {
        return PowerChoice.choose(Lenses.bag(), Lenses.view(eye), Dioptres.of(target), side);
    }

    private static double beside(ThinEye eye, Dioptres power, double target) {
        return eye.refraction(power).value() - target;
    }

    @Property
    void no_other_labelled_power_on_the_policys_side_is_nearer(
            @ForAll TargetSide side,
            @ForAll @DoubleRange(min = 22, max = 26) double length,
            @ForAll @DoubleRange(min = 40, max = 46) double cornea,
            @ForAll @DoubleRange(min = -3, max = 1) double target) {
        ThinEye eye = eye(length, cornea);
        Optional<Dioptres> chosen = choose(eye, target, side).value();
        Assume.that(chosen.isPresent());
        double nearest = MADE.stream()
                .mapToDouble(power -> beside(eye, power, target))
                .filter(off -> side != TargetSide.MYOPIC || off < HAIR)
                .filter(off -> side != TargetSide.HYPEROPIC || off > -HAIR)
                .map(Math::abs)
                .min()
                .orElseThrow();
        double off = beside(eye, chosen.get(), target);
        assertThat(MADE).contains(chosen.get());
        assertThat(Math.abs(off)).isLessThanOrEqualTo(nearest + HAIR);
        assertThat(side == TargetSide.MYOPIC ? off : -1).isLessThan(HAIR);
        assertThat(side == TargetSide.HYPEROPIC ? off : 1).isGreaterThan(-HAIR);
    }

    @Property
    void a_power_that_meets_the_target_exactly_is_chosen_on_every_side(
            @ForAll TargetSide side,
            @ForAll @DoubleRange(min = 20, max = 30) double length,
            @ForAll @DoubleRange(min = 38, max = 48) double cornea,
            @ForAll @IntRange(max = 48) int which) {
        ThinEye eye = eye(length, cornea);
        Dioptres power = MADE.get(which);
        assertThat(choose(eye, eye.refraction(power).value(), side).value()).contains(power);
    }

    @Property
    void a_power_is_withheld_exactly_if_the_need_lies_beyond_those_made(
            @ForAll TargetSide side,
            @ForAll @DoubleRange(min = 19, max = 33) double length,
            @ForAll @DoubleRange(min = 38, max = 48) double cornea) {
        ThinEye eye = eye(length, cornea);
        double needed = eye.power(Dioptres.of(0)).value();
        Outcome<Dioptres> chosen = choose(eye, 0, side);
        assertThat(chosen.value().isPresent()).isEqualTo(needed >= 6 && needed <= 30);
        assertThat(chosen.value().isPresent() ? List.of(FindingCode.POWER_NOT_MADE) : codes(chosen))
                .containsExactly(FindingCode.POWER_NOT_MADE);
    }

    @Property
    void the_three_sides_stand_in_order(
            @ForAll @DoubleRange(min = 22, max = 26) double length,
            @ForAll @DoubleRange(min = 40, max = 46) double cornea) {
        ThinEye eye = eye(length, cornea);
        Assume.that(choose(eye, 0, TargetSide.NEAREST).value().isPresent());
        Dioptres myopic = choose(eye, 0, TargetSide.MYOPIC).value().orElseThrow();
        Dioptres nearest = choose(eye, 0, TargetSide.NEAREST).value().orElseThrow();
        Dioptres hyperopic = choose(eye, 0, TargetSide.HYPEROPIC).value().orElseThrow();
        assertThat(List.of(hyperopic, nearest, myopic)).isSorted();
        assertThat(nearest).isIn(myopic, hyperopic);
        assertThat(myopic.minus(hyperopic).value()).isLessThanOrEqualTo(0.5);
    }

    private static List<FindingCode> codes(Outcome<Dioptres> outcome) {
        return outcome.findings().stream().map(Finding::code).toList();
    }
}
