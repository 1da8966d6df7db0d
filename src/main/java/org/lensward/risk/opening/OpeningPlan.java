package org.lensward.risk.opening;

import java.util.List;
import java.util.Optional;
import org.lensward.finding.Finding;
import org.lensward.risk.Bring;

/**
 * How the capsule of one eye is to be opened. A proposal that awaits the surgeon.
 *
 * @param technique the one chosen; none where the record or the policy forbids all
 * @param size how wide; none where no technique is chosen or the optic's diameter is not known
 * @param views every technique, weighed
 * @param dye for this eye, where one is needed and may be used
 * @param steps of the technique, in order
 * @param things to have ready for it
 * @param findings what the team has to know
 */
public record OpeningPlan(
        Optional<OpeningTechnique> technique,
        Optional<OpeningSize> size,
        List<TechniqueView> views,
        Optional<DyePlan> dye,
        List<String> steps,
        List<Bring> things,
        List<Finding> findings) {

    public OpeningPlan {
        views = List.copyOf(views);
        steps = List.copyOf(steps);
        things = List.copyOf(things);
        findings = List.copyOf(findings);
    }

    /** What is to be said beside every choice between techniques. */
    public String caveat() {
        return EdgeStrength.CAVEAT;
    }

    /** The view of that technique. */
    public TechniqueView view(OpeningTechnique which) {
        return views.stream()
                .filter(view -> view.technique() == which)
                .findFirst()
                .orElseThrow();
    }
}
