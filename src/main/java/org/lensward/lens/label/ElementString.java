package org.lensward.lens.label;

import static org.lensward.finding.FindingCode.LABEL_GARBLED;
import static org.lensward.finding.FindingCode.LABEL_PART_UNKNOWN;
import static org.lensward.finding.FindingCode.LABEL_TRUNCATED;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lensward.finding.Outcome;

/**
 * GS1 element strings taken apart, in any order (General Specifications section 7.8). A value of predefined length is counted; any other ends
 * at a separator, which is FNC1 in the symbol and GS when transmitted, or at the end.
 */
final class ElementString {

    /** ASCII GS, as which scanners transmit FNC1. */
    static final char SEPARATOR = '\u001D';

    /** How scanners that may send no control characters write it; common practice, no source. */
    private static final Pattern VISIBLE = Pattern.compile("<GS>|\\{GS\\}|\\[GS\\]|<FNC1>|\\{FNC1\\}|\\^\\]|\u241D");

    private static final Pattern BRACKETED = Pattern.compile("\\((\\d{2,4})\\)([^()]*)");
    private static final Pattern BROKEN_BRACKET = Pattern.compile("\\(\\d{0,4}");

    private final Reading reading;

    ElementString(Reading reading) {
        this.reading = reading;
    }

    /** The text with separators as barcodes transmit them. */
    static String separated(String text) {
        return VISIBLE.matcher(text).replaceAll(String.valueOf(SEPARATOR));
    }

    /** The elements of a barcode's content. */
    Outcome<List<Element>> elements(String scanned) {
        String text = separated(scanned).strip();
        List<Element> found = new ArrayList<>();
        int place = 0;
        while (place < text.length()) {
            if (text.charAt(place) == SEPARATOR) {
                place++;
                continue;
            }
            Optional<ApplicationIdentifier> identifier = ApplicationIdentifiers.at(text, place);
            if (identifier.isEmpty()) {
                return unknown(text, place);
            }
            Element.Span span = span(text, place, identifier.get());
            Outcome<Element> element = Element.of(identifier.get(), span, reading);
            if (element.value().isEmpty()) {
                return Outcome.withheld(element.findings());
            }
            element.value().ifPresent(found::add);
            place = span.to();
        }
        return Outcome.ready(found);
    }

    /** The elements as printed under a barcode. Blanks are layout, for no GS1 value holds one. */
    Outcome<List<Element>> bracketed(String typed) {
        String text = separated(typed).replace(" ", "").replaceAll(SEPARATOR + "(?=\\(|$)", "");
        List<Element> found = new ArrayList<>();
        Matcher part = BRACKETED.matcher(text);
        int place = 0;
        while (place < text.length()) {
            if (!part.region(place, text.length()).lookingAt()) {
                return brokenBracket(text, place);
            }
            Optional<ApplicationIdentifier> identifier = ApplicationIdentifiers.of(part.group(1));
            if (identifier.isEmpty()) {
                return reading.refuse(LABEL_PART_UNKNOWN, "(" + part.group(1) + ")");
            }
            Element.Span span = new Element.Span(text, part.start(2), part.end(2));
            Outcome<Element> element = Element.of(identifier.get(), span, reading);
            if (element.value().isEmpty()) {
                return Outcome.withheld(element.findings());
            }
            element.value().ifPresent(found::add);
            place = part.end();
        }
        return Outcome.ready(found);
    }

    private Element.Span span(String text, int place, ApplicationIdentifier identifier) {
        int from = place + identifier.code().length();
        int separator = text.indexOf(SEPARATOR, from);
        int end = separator < 0 ? text.length() : separator;
        return new Element.Span(text, from, identifier.counted() ? Math.min(end, from + identifier.longest()) : end);
    }

    /** No identifier stands here: the scan broke off within one, is garbled, or GS1 defines none. */
    private Outcome<List<Element>> unknown(String text, int place) {
        int end = place;
        while (end < Math.min(text.length(), place + 4) && text.charAt(end) >= '0' && text.charAt(end) <= '9') {
            end++;
        }
        String digits = text.substring(place, end);
        boolean cut = end == text.length() || text.charAt(end) == SEPARATOR;
        if (cut && ApplicationIdentifiers.mayBegin(digits)) {
            return reading.refuse(LABEL_TRUNCATED, "it ends within an identifier, at " + digits);
        }
        if (digits.length() < 2 && end < text.length()) {
            return reading.garbled(text, end);
        }
        String begun = digits.substring(0, Math.min(2, digits.length()));
        return reading.refuse(LABEL_PART_UNKNOWN, begun + ".. at character " + (place + 1));
    }

    private Outcome<List<Element>> brokenBracket(String text, int place) {
        return BROKEN_BRACKET.matcher(text.substring(place)).matches()
                ? reading.refuse(LABEL_TRUNCATED, "it ends within a bracket")
                : reading.refuse(
                        LABEL_GARBLED,
                        "at character " + (place + 1)
                                + " a bracket is open, empty or part of a value; scan it instead");
    }
}
