package org.lensward.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.lensward.eye.Laterality;
import org.lensward.finding.FindingCode;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/** Wrong scans of every kind, alone and together, at every checkpoint: none is accepted. The right one is. */
class LensCheckLaws {

    /** Half dioptres from -10 to +30 D, the usual steps (common practice, no source), never 0. */
    private static Expected planned(Laterality eye, int half, boolean toric) {
        Assume.that(half != 0);
        return Checks.expected(
                eye,
                new CheckedLens(
                        "DeviceDefinition/lens-1",
                        Dioptres.of(half / 2.0),
                        toric ? Optional.of(Dioptres.of(2.25)) : Optional.empty()));
    }

    @Property(tries = 10_000)
    void no_wrong_scan_is_accepted(
            @ForAll Checkpoint at,
            @ForAll Laterality eye,
            @ForAll @IntRange(min = -20, max = 60) int half,
            @ForAll boolean toric,
            @ForAll @Size(min = 1, max = 3) Set<WrongScan> wrongs,
            @ForAll Random chance) {
        Expected expected = planned(eye, half, toric);
        CheckProgress before = walked(at, expected);
        Presented presented = Checks.right(at, expected);
        WrongScan last = WrongScan.EXPIRED;
        for (WrongScan wrong : wrongs) {
            presented = wrong.of(presented, expected, chance);
            last = wrong;
        }

        assertThat(LensCheck.compare(at, expected, presented, Checks.policy()).all())
                .extracting(Difference::code)
                .contains(last.caughtAs());
        Exemption signed = new Exemption.Signed("Practitioner/surgeon", "in a hurry", "Practitioner/nurse-1");
        Step step = before.present(new Attempt(at, presented, signed), expected, Checks.NOW, Checks.policy());
        assertThat(step).isInstanceOf(Step.Stopped.class);
        assertThat(((Step.Stopped) step).next().state()).isEqualTo(CheckState.FAILED);
    }

    @Property
    void the_right_scan_is_accepted_at_every_checkpoint(
            @ForAll Laterality eye, @ForAll @IntRange(min = -20, max = 60) int half, @ForAll boolean toric) {
        Expected expected = planned(eye, half, toric);
        CheckProgress end = walked(Checkpoint.SIGN_OUT, expected);
        Step out = end.present(
                new Attempt(Checkpoint.SIGN_OUT, Checks.right(Checkpoint.SIGN_OUT, expected)),
                expected,
                Checks.NOW,
                Checks.policy());
        assertThat(((Step.Advanced) out).next().state()).isEqualTo(CheckState.COMPLETED);
    }

    @Property
    void an_axis_is_the_same_a_half_turn_on(@ForAll @IntRange(min = -2, max = 2) int halfTurns) {
        Expected toric = planned(Laterality.RIGHT, 43, true);
        Presented turned = new Spoiled(Checks.right(Checkpoint.TIME_OUT, toric))
                .axis(Optional.of(Degrees.of(5 + 180 * halfTurns)))
                .all();
        assertThat(LensCheck.compare(Checkpoint.TIME_OUT, toric, turned, Checks.policy())
                        .all())
                .isEmpty();
    }

    @Property
    void an_axis_off_by_a_degree_or_more_is_caught(@ForAll @IntRange(min = 1, max = 179) int off) {
        Expected toric = planned(Laterality.RIGHT, 43, true);
        Presented turned = new Spoiled(Checks.right(Checkpoint.TIME_OUT, toric))
                .axis(Optional.of(Degrees.of(5 + off)))
                .all();
        assertThat(LensCheck.compare(Checkpoint.TIME_OUT, toric, turned, Checks.policy())
                        .all())
                .extracting(Difference::code)
                .containsExactly(FindingCode.CHECK_AXIS_DIFFERS);
    }

    /** A check that has passed every checkpoint before that one. */
    private static CheckProgress walked(Checkpoint upTo, Expected expected) {
        CheckProgress progress = ((Step.Advanced) CheckProgress.opened().confirm(expected, Checks.NOW)).next();
        for (Checkpoint at : Checkpoint.values()) {
            if (at == upTo) {
                return progress;
            }
            progress = ((Step.Advanced) progress.present(
                            new Attempt(at, Checks.right(at, expected)), expected, Checks.NOW, Checks.policy()))
                    .next();
        }
        return progress;
    }
}
