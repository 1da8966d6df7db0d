package org.lensward.risk.opening;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.finding.Finding;
import org.lensward.risk.opening.ImplantAdvice.EnlargeFirst;
import org.lensward.risk.opening.ImplantAdvice.GoesIn;

/**
 * The planned lens judged again from the opening that was made.
 *
 * @param advice never empty; the lens going in stands alone
 * @param overlap where optic, diameter and decentration are all known
 * @param findings nothing for a fine opening
 */
public record OpeningJudgement(List<ImplantAdvice> advice, Optional<Overlap> overlap, List<Finding> findings) {

    public OpeningJudgement {
        advice = advice.isEmpty() ? List.of(new GoesIn()) : one(advice);
        findings = List.copyOf(findings);
    }

    /** Whether nothing stands against the planned lens. */
    public boolean goesIn() {
        return advice.contains(new GoesIn());
    }

    /** Each advice once; several reasons to widen make one range. */
    private static List<ImplantAdvice> one(List<ImplantAdvice> advice) {
        Optional<EnlargeFirst> widening = advice.stream()
                .filter(EnlargeFirst.class::isInstance)
                .map(EnlargeFirst.class::cast)
                .reduce(EnlargeFirst::and);
        return Stream.concat(widening.stream(), advice.stream().filter(each -> !(each instanceof EnlargeFirst)))
                .distinct()
                .toList();
    }
}
