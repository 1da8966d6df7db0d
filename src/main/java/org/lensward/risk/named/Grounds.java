package org.lensward.risk.named;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.lensward.eye.History.Entry;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** Collects what one risk rests on: words for a person, evidence for the record. */
final class Grounds {

    private final List<String> words = new ArrayList<>();
    private final List<Evidence> evidence = new ArrayList<>();

    Grounds add(String why, Evidence where) {
        words.add(why);
        evidence.add(where);
        return this;
    }

    Grounds add(List<Entry> entries) {
        entries.forEach(entry -> add(entry.words(), entry.evidence()));
        return this;
    }

    /** A sign that a paper found to multiply the risk. */
    Grounds add(Entry entry, double ratio) {
        return add(String.format(Locale.ROOT, "%s x%s", entry.words(), ratio), entry.evidence());
    }

    /** The finding, if there is any ground for it; its message names each ground once. */
    Stream<Finding> name(FindingCode code) {
        return evidence.isEmpty()
                ? Stream.empty()
                : Stream.of(Finding.of(
                        code,
                        evidence.stream().distinct().toList(),
                        String.join(", ", words.stream().distinct().toList())));
    }
}
