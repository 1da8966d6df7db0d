package org.lensward.lens.label;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;

/**
 * A label as it is printed for people beneath its barcode: GS1 application identifiers in round brackets, each followed by its value, and no
 * separators (GS1 General Specifications, section 4.14, human readable interpretation; value from memory). HIBC as it stands.
 */
public final class HumanReadable {

    /** No date is read here, so any day will do to find its century by. */
    private static final LabelDates DATES = new LabelDates(LocalDate.EPOCH);

    private HumanReadable() {}

    /**
     * Of what the scanner gave, one barcode a line.
     *
     * @return empty where a line is no label
     */
    public static Optional<String> of(String scans) {
        Reading reading = new Reading(new Evidence("scan", "", ""), DATES);
        List<Optional<String>> parts = scans.lines()
                .filter(line -> !line.isBlank())
                .map(line -> one(line, reading))
                .toList();
        return parts.isEmpty() || parts.stream().anyMatch(Optional::isEmpty)
                ? Optional.empty()
                : Optional.of(
                        parts.stream().flatMap(Optional::stream).distinct().collect(Collectors.joining(" ")));
    }

    private static Optional<String> one(String line, Reading reading) {
        ElementString elements = new ElementString(reading);
        Outcome<String> printed = Scan.of(line, reading).then(scan -> switch (scan.form()) {
            case ELEMENTS -> elements.elements(scan.text()).then(HumanReadable::bracketed);
            case BRACKETED -> elements.bracketed(scan.text()).then(HumanReadable::bracketed);
            case HIBC -> Outcome.ready(scan.text());
        });
        return printed.value();
    }

    private static Outcome<String> bracketed(List<Element> elements) {
        Stream<String> parts = elements.stream().map(each -> each.identifier() + each.value());
        return Outcome.ready(parts.collect(Collectors.joining()));
    }
}
