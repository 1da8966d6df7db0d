package org.lensward.eye;

import static org.lensward.finding.FindingCode.CORNEA_IRREGULAR;
import static org.lensward.finding.FindingCode.LENS_ALREADY_OUT;
import static org.lensward.finding.FindingCode.SILICONE_OIL_IN_EYE;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.eye.History.Entry;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** Whether the standard formulas hold for this eye at all: a natural lens, a regular cornea, fluids that are known. */
public final class EyeStatus {

    private EyeStatus() {}

    /** Every reason why a standard plan would mislead. */
    public static List<Finding> judge(Eye eye) {
        return Stream.of(
                        reason(eye, CORNEA_IRREGULAR, Sign.KERATOCONUS, Sign.CORNEAL_GRAFT),
                        oil(eye),
                        reason(eye, LENS_ALREADY_OUT, Sign.APHAKIA, Sign.PSEUDOPHAKIA))
                .flatMap(stream -> stream)
                .toList();
    }

    /** Oil is no obstacle once it is known whether it stays; saying both is saying neither. */
    private static Stream<Finding> oil(Eye eye) {
        boolean stays = eye.history().affirmed(Sign.SILICONE_OIL_STAYS).isPresent();
        boolean leaves = eye.history().affirmed(Sign.SILICONE_OIL_LEAVES).isPresent();
        return stays == leaves
                ? reason(eye, SILICONE_OIL_IN_EYE, Sign.SILICONE_OIL, Sign.SILICONE_OIL_STAYS)
                : Stream.empty();
    }

    private static Stream<Finding> reason(Eye eye, FindingCode code, Sign... signs) {
        List<Entry> present = Stream.of(signs)
                .flatMap(sign -> eye.history().affirmed(sign).stream())
                .toList();
        String words = present.stream().map(Entry::words).distinct().collect(Collectors.joining(", "));
        return present.isEmpty()
                ? Stream.empty()
                : Stream.of(
                        Finding.of(code, present.stream().map(Entry::evidence).toList(), words));
    }
}
