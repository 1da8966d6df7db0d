package org.lensward.outcome.error;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.lensward.outcome.Exclusion;

/**
 * The refractive audit.
 *
 * @param operations told
 * @param counted of them
 * @param excluded how many under each reason; reasons that did not occur are absent; with those counted, the sum is all
 * @param groups for each group the formulas, best standard deviation first; a group with too few eyes has an empty list
 * @param eyes how many eyes each group has
 */
public record AuditReport(
        long operations,
        long counted,
        Map<Exclusion, Long> excluded,
        SortedMap<Group, List<ErrorSummary>> groups,
        SortedMap<Group, Long> eyes) {

    public AuditReport {
        excluded = Map.copyOf(excluded);
    }

    /** The figures of one group; empty where it has too few eyes or none. */
    public List<ErrorSummary> of(Group group) {
        return groups.getOrDefault(group, List.of());
    }
}
