package org.lensward.record.outcome;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.lensward.finding.Evidence;
import org.lensward.record.Unused;

/** What could not be used, counted by its reason, with the first resources of each named; its size does not grow with what it counts. */
public final class UnusedCounts {

    /** Enough to find the cause by. */
    static final int NAMED = 20;

    private final Map<Unused.Reason, Long> counts = new EnumMap<>(Unused.Reason.class);
    private final Map<Unused.Reason, List<Evidence>> named = new EnumMap<>(Unused.Reason.class);

    void add(Unused unused) {
        counts.merge(unused.reason(), 1L, Long::sum);
        List<Evidence> first = named.computeIfAbsent(unused.reason(), any -> new ArrayList<>());
        if (first.size() < NAMED) {
            first.add(unused.evidence());
        }
    }

    /** How many resources under each reason; a reason that did not occur is absent. */
    public Map<Unused.Reason, Long> counts() {
        return Map.copyOf(counts);
    }

    /** The first of them, in the order of their persons' keys. */
    public List<Evidence> named(Unused.Reason reason) {
        return List.copyOf(named.getOrDefault(reason, List.of()));
    }
}
