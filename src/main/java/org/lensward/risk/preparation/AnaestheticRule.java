package org.lensward.risk.preparation;

import java.util.Set;
import org.lensward.eye.Sign;

/**
 * When an anaesthetic may not be chosen.
 *
 * @param kind which anaesthetic
 * @param refusedBy signs that refuse it; where the record is silent about one, it cannot be chosen yet
 * @param avoidedBy signs that refuse it when present; silence about one is a question, not an obstacle
 * @param longEye what an axial length above the limit does to it
 * @param source where the rule comes from
 */
public record AnaestheticRule(
        Anaesthetic kind, Set<Sign> refusedBy, Set<Sign> avoidedBy, LongEye longEye, String source) {

    /** What a long eye means for an anaesthetic. */
    public enum LongEye {
        /** It may not be used, nor while the length is unknown. */
        REFUSES,
        /** It is not used; an unknown length is a question. */
        AVOIDS,
        /** Length does not matter. */
        ALLOWS
    }

    public AnaestheticRule {
        refusedBy = Set.copyOf(refusedBy);
        avoidedBy = Set.copyOf(avoidedBy);
    }
}
