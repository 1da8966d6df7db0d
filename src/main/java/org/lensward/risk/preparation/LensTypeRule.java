package org.lensward.risk.preparation;

import java.util.Set;
import org.lensward.eye.Sign;

/**
 * Which signs speak against a kind of lens.
 *
 * @param type which kind
 * @param refusedBy signs that forbid it
 * @param doubtedBy signs that speak against it
 * @param needsBag whether it needs a capsule that holds it steady and centred
 * @param source where the rule comes from
 */
public record LensTypeRule(LensType type, Set<Sign> refusedBy, Set<Sign> doubtedBy, boolean needsBag, String source) {

    public LensTypeRule {
        refusedBy = Set.copyOf(refusedBy);
        doubtedBy = Set.copyOf(doubtedBy);
    }
}
