package org.lensward.eye;

import static org.lensward.finding.FindingCode.CORNEA_AFTER_LASER;
import static org.lensward.finding.FindingCode.CORNEA_IRREGULAR;
import static org.lensward.finding.FindingCode.LENS_ALREADY_OUT;
import static org.lensward.finding.FindingCode.SILICONE_OIL_IN_EYE;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.eye.History.Entry;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** Whether the standard formulas hold for this eye at all: a natural lens, a cornea nobody reshaped, ordinary fluids. */
public final class EyeStatus {

    private EyeStatus() {}

    /** Every reason why a standard plan would mislead. */
    public static List<Finding> judge(Eye eye) {
        return Stream.of(
                        reason(eye, CORNEA_AFTER_LASER, Sign.CORNEA_RESHAPED),
                        reason(eye, CORNEA_IRREGULAR, Sign.KERATOCONUS, Sign.CORNEAL_GRAFT),
                        reason(eye, SILICONE_OIL_IN_EYE, Sign.SILICONE_OIL),
                        reason(eye, LENS_ALREADY_OUT, Sign.APHAKIA, Sign.PSEUDOPHAKIA))
                .flatMap(stream -> stream)
                .toList();
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
