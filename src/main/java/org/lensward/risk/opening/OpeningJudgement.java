package org.lensward.risk.opening;

import java.util.List;
import java.util.Optional;
import org.lensward.finding.Finding;

/**
 * The planned lens judged again from the opening that was made.
 *
 * @param advice never empty; the lens going in stands alone
 * @param overlap where optic, diameter and decentration are all known
 * @param findings nothing for a fine opening
 */
public record OpeningJudgement(List<ImplantAdvice> advice, Optional<Overlap> overlap, List<Finding> findings) {

    public OpeningJudgement {
        advice = advice.isEmpty()
                ? List.of(new ImplantAdvice.GoesIn())
                : advice.stream().distinct().toList();
        findings = List.copyOf(findings);
    }

    /** Whether nothing stands against the planned lens. */
    public boolean goesIn() {
        return advice.contains(new ImplantAdvice.GoesIn());
    }
}
