package org.lensward.check;

import static org.lensward.finding.FindingCode.CHECK_ALLERGIES_DIFFER;
import static org.lensward.finding.FindingCode.CHECK_BACK_UP_ABSENT;
import static org.lensward.finding.FindingCode.CHECK_DAY_DIFFERS;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.lensward.eye.Limit;
import org.lensward.finding.FindingCode;
import org.lensward.quantity.Degrees;

/**
 * How the hospital checks its lenses.
 *
 * @param twoPeople the checkpoints that two different people answer for
 * @param readTheBox the checkpoints at which a second person reads model and power from the box, even of a carton the bank knows
 * @param axisReading how far an axis may be read from the one planned: the rounding of the sheet
 * @param overridable what a clinician may override with a reason and a second person; never patient, eye, plan, lens, carton or package
 */
public record CheckPolicy(
        List<Checkpoint> twoPeople,
        List<Checkpoint> readTheBox,
        Limit<Degrees> axisReading,
        List<FindingCode> overridable) {

    /** Common practice, no source: these are judgements; everything else is a fact. */
    private static final Set<FindingCode> JUDGEMENTS =
            EnumSet.of(CHECK_ALLERGIES_DIFFER, CHECK_BACK_UP_ABSENT, CHECK_DAY_DIFFERS);

    public CheckPolicy {
        twoPeople = List.copyOf(twoPeople);
        readTheBox = List.copyOf(readTheBox);
        overridable = List.copyOf(overridable);
        if (!JUDGEMENTS.containsAll(overridable)) {
            throw new IllegalArgumentException("Only " + JUDGEMENTS + " may ever be overridden, not " + overridable);
        }
    }

    /** Whether a clinician may override every one of them. */
    boolean allows(List<Difference> differences) {
        return differences.stream().map(Difference::code).allMatch(overridable::contains);
    }
}
