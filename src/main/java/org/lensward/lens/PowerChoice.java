package org.lensward.lens;

import static org.lensward.finding.FindingCode.POWER_NOT_MADE;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Dioptres;

/** Which labelled power comes nearest the target on the policy's side. */
final class PowerChoice {

    /** Far below any step of power: what meets the target but for how it was computed meets it. */
    private static final double SAME = 1e-6;

    private PowerChoice() {}

    static Outcome<Dioptres> choose(LensModel model, FormulaView eye, Dioptres target, TargetSide side) {
        Dioptres needed = eye.power(target);
        List<Dioptres> made = model.powers();
        Optional<Dioptres> best = made.stream()
                .filter(power -> onSide(eye.refraction(power), target, side))
                .min(Comparator.comparing(power -> eye.refraction(power).distanceTo(target)));
        if (best.isEmpty() || beyond(needed, made)) {
            return Outcome.withheld(Finding.of(
                    POWER_NOT_MADE,
                    model.evidence(),
                    String.format(Locale.ROOT, "%.2f D", needed.value()),
                    model.name()));
        }
        return Outcome.ready(best.get());
    }

    private static boolean onSide(Dioptres predicted, Dioptres target, TargetSide side) {
        return switch (side) {
            case NEAREST -> true;
            case MYOPIC -> predicted.value() - target.value() < SAME;
            case HYPEROPIC -> target.value() - predicted.value() < SAME;
        };
    }

    /** A need past the last power made is not met by the last power. */
    private static boolean beyond(Dioptres needed, List<Dioptres> made) {
        double least = made.get(0).value();
        double most = made.get(made.size() - 1).value();
        return needed.value() < least - SAME || needed.value() > most + SAME;
    }
}
