package org.lensward.risk.preparation;

import java.util.List;
import org.lensward.finding.Evidence;

/**
 * Whether something suits this eye, and why.
 *
 * @param verdict the answer
 * @param reasons what the record shows against it
 * @param unknown what the record does not say and would have to be found out
 * @param evidence where the reasons stand
 */
public record Judgement(Verdict verdict, List<String> reasons, List<String> unknown, List<Evidence> evidence) {

    public Judgement {
        reasons = List.copyOf(reasons);
        unknown = List.copyOf(unknown);
        evidence = List.copyOf(evidence);
    }
}
