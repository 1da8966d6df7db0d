package org.lensward.eye;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.lensward.finding.Evidence;

/**
 * What the record says of an eye's and its owner's signs. A sign nobody mentioned is unknown; it is never taken as absent.
 *
 * @param entries each statement with its evidence
 */
public record History(List<Entry> entries) {

    public History {
        entries = entries.stream()
                .distinct()
                .sorted(Comparator.comparing(Entry::sign).thenComparing(Entry::evidence))
                .toList();
    }

    /**
     * One statement.
     *
     * @param sign what it is about
     * @param present whether it affirms or denies the sign
     * @param words what the record calls it
     * @param evidence where it stands
     */
    public record Entry(Sign sign, boolean present, String words, Evidence evidence) {}

    /** The first statement that affirms the sign. */
    public Optional<Entry> affirmed(Sign sign) {
        return find(sign, true);
    }

    /** Whether the record denies the sign and nowhere affirms it. */
    public boolean denied(Sign sign) {
        return affirmed(sign).isEmpty() && find(sign, false).isPresent();
    }

    /** Whether the record is silent about the sign. */
    public boolean unknown(Sign sign) {
        return find(sign, true).isEmpty() && find(sign, false).isEmpty();
    }

    /** A plain loop: one plan asks some hundreds of times. */
    private Optional<Entry> find(Sign sign, boolean present) {
        for (Entry entry : entries) {
            if (entry.sign() == sign && entry.present() == present) {
                return Optional.of(entry);
            }
        }
        return Optional.empty();
    }
}
