package org.lensward.risk.preparation;

import java.util.List;
import org.lensward.finding.Evidence;
import org.lensward.risk.Bring;

/**
 * One thing the team does for this eye, and why.
 *
 * @param topic what it is about
 * @param action what is done
 * @param reasons what the record shows that asks for it; empty where something has to be found out first
 * @param unknown what the record does not say and somebody has to find out; never taken as absent
 * @param evidence where the reasons stand
 * @param source where the rule comes from
 * @param bring what has to lie ready for it
 */
public record Precaution(
        Topic topic,
        String action,
        List<String> reasons,
        List<String> unknown,
        List<Evidence> evidence,
        String source,
        List<Bring> bring) {

    public Precaution {
        reasons = List.copyOf(reasons);
        unknown = List.copyOf(unknown);
        evidence = List.copyOf(evidence);
        bring = List.copyOf(bring);
    }
}
