package org.lensward.risk.opening;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.eye.History;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;

/**
 * What the record answers to one question: yes, no, or nothing.
 *
 * @param said which of the three
 * @param words what the record calls it; what was asked for where it is silent or denies it
 * @param evidence where it affirms it; empty otherwise
 */
record Answer(Said said, String words, List<Evidence> evidence) {

    enum Said {
        YES,
        NO,
        NOTHING
    }

    /** Whether any of these signs is there. No only where each of them is denied. */
    static Answer any(History history, Sign... signs) {
        List<Entry> present = Stream.of(signs)
                .flatMap(sign -> history.affirmed(sign).stream())
                .toList();
        if (present.isEmpty()) {
            boolean denied = Stream.of(signs).allMatch(history::denied);
            String asked = Stream.of(signs).map(Sign::toString).collect(Collectors.joining(", "));
            return new Answer(denied ? Said.NO : Said.NOTHING, asked, List.of());
        }
        return new Answer(
                Said.YES,
                present.stream().map(Entry::words).distinct().collect(Collectors.joining(", ")),
                present.stream().map(Entry::evidence).distinct().toList());
    }

    boolean yes() {
        return said == Said.YES;
    }

    boolean open() {
        return said == Said.NOTHING;
    }
}
