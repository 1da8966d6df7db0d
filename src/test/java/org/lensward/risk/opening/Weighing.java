package org.lensward.risk.opening;

import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;
import static org.lensward.risk.opening.OpeningTechnique.PHOTODISRUPTION;
import static org.lensward.risk.opening.OpeningTechnique.THERMAL;

/** How a hospital that has every technique weighs one for an eye. */
final class Weighing {

    private static final OpeningPolicy ALL = Openings.having(PHOTODISRUPTION, DYE_LASER_COAGULATION, THERMAL);

    private Weighing() {}

    static TechniqueView view(OpeningCandidate candidate, OpeningTechnique technique) {
        return candidate.plan(ALL).view(technique);
    }

    static Verdict verdict(OpeningCandidate candidate, OpeningTechnique technique) {
        return view(candidate, technique).verdict();
    }

    static Reason first(OpeningCandidate candidate, OpeningTechnique technique) {
        return view(candidate, technique).reasons().get(0);
    }
}
