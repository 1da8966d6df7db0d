package org.lensward.lens.label;

import static org.lensward.finding.FindingCode.LABEL_GARBLED;
import static org.lensward.finding.FindingCode.LABEL_TRUNCATED;

import org.lensward.finding.Outcome;

/**
 * One element of a GS1 label: an identifier and what follows it.
 *
 * @param identifier what it is
 * @param value what it says, as long and of such characters as GS1 defines
 */
record Element(ApplicationIdentifier identifier, String value) {

    private static final String LOST = "a separator is lost, or two labels ran together";

    /** The element, if its value is as GS1 defines it. */
    static Outcome<Element> of(ApplicationIdentifier identifier, Span span, Reading reading) {
        String value = span.value();
        int foreign = identifier.firstForeign(value);
        if (foreign < value.length()) {
            return reading.garbled(span.text(), span.from() + foreign);
        }
        if (value.length() < identifier.shortest()) {
            String rest = value.length() + " of " + identifier.shortest() + " characters";
            return reading.refuse(LABEL_TRUNCATED, identifier + " has " + rest);
        }
        if (value.length() > identifier.longest()) {
            return reading.refuse(
                    LABEL_GARBLED, identifier + " runs on beyond " + identifier.longest() + " characters: " + LOST);
        }
        return Outcome.ready(new Element(identifier, value));
    }

    /**
     * A part of a text.
     *
     * @param text the whole
     * @param from where the part begins
     * @param to where it ends, itself not part
     */
    record Span(String text, int from, int to) {
        String value() {
            return text.substring(from, to);
        }
    }
}
