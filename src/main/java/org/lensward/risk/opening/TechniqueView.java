package org.lensward.risk.opening;

import java.util.List;

/**
 * One technique, weighed for one eye.
 *
 * @param technique which
 * @param verdict what the strongest reason says
 * @param reasons strongest first
 */
public record TechniqueView(OpeningTechnique technique, Verdict verdict, List<Reason> reasons) {

    public TechniqueView {
        reasons = List.copyOf(reasons);
    }

    static TechniqueView of(OpeningTechnique technique, List<Reason> reasons) {
        List<Reason> strongestFirst = reasons.stream()
                .sorted((one, other) -> other.bearing().compareTo(one.bearing()))
                .toList();
        return new TechniqueView(technique, Verdict.of(reasons), strongestFirst);
    }
}
