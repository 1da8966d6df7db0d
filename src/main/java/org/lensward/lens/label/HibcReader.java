package org.lensward.lens.label;

import static org.lensward.finding.FindingCode.LABEL_AMBIGUOUS;
import static org.lensward.finding.FindingCode.LABEL_CHECK_WRONG;
import static org.lensward.finding.FindingCode.LABEL_NOT_RECOGNISED;
import static org.lensward.finding.FindingCode.LABEL_PART_UNKNOWN;
import static org.lensward.finding.FindingCode.LABEL_TRUNCATED;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.lensward.finding.Outcome;

/**
 * Reads HIBC labels of makers (ANSI/HIBC 2.6): a primary barcode names the device; a secondary gives lot, serial and expiry and repeats the
 * primary's check character as its link; or both stand in one, parted by strokes. A check character ends each.
 */
final class HibcReader {

    /** Labeler of four, product or catalogue number of 1 to 18, unit of measure. */
    private static final Pattern PRIMARY = Pattern.compile("[A-Z][A-Z0-9]{3}[A-Z0-9]{1,18}[0-9]");

    private final Reading reading;
    private final HibcSecondary secondary;

    HibcReader(Reading reading) {
        this.reading = reading;
        this.secondary = new HibcSecondary(reading);
    }

    Outcome<ScanFacts> read(String scanned) {
        boolean caption = scanned.startsWith("*");
        if (caption && !scanned.endsWith("*")) {
            return reading.refuse(LABEL_TRUNCATED, "the closing asterisk is missing");
        }
        String text = caption ? scanned.substring(1, scanned.length() - 1) : scanned;
        return checked(text.replaceFirst("_$", " "))
                .then(this::facts)
                .then(facts -> Outcome.ready(new ScanFacts(Issuer.HIBC, facts)));
    }

    /** What stands between the flag and a check character that holds. A caption prints a check character of blank as underscore. */
    private Outcome<String> checked(String text) {
        int foreign = IntStream.range(0, text.length())
                .filter(place -> Modulo43.ALPHABET.indexOf(text.charAt(place)) < 0)
                .findFirst()
                .orElse(text.length());
        if (foreign < text.length()) {
            return reading.garbled(text, foreign);
        }
        if (text.length() < 4) {
            return reading.refuse(LABEL_TRUNCATED, "a HIBC label is longer");
        }
        if (holds(text)) {
            return Outcome.ready(text.substring(1, text.length() - 1));
        }
        boolean two = IntStream.range(2, text.length() - 1)
                .anyMatch(place ->
                        text.charAt(place) == '+' && holds(text.substring(0, place)) && holds(text.substring(place)));
        return two
                ? reading.refuse(LABEL_AMBIGUOUS, "two HIBC barcodes ran together")
                : reading.refuse(LABEL_CHECK_WRONG, "the HIBC barcode");
    }

    private static boolean holds(String text) {
        int last = text.length() - 1;
        return Modulo43.of(text.substring(0, last)) == text.charAt(last);
    }

    private Outcome<List<LabelFact>> facts(String body) {
        char first = body.charAt(0);
        if (first == '/') {
            return reading.refuse(LABEL_NOT_RECOGNISED, "it is a hospital's own HIBC label, not a maker's");
        }
        if (Character.isLetter(first)) {
            return primary(Arrays.asList(body.split("/", -1)));
        }
        int link = body.length() - 1;
        List<LabelFact> linked = List.of(new LabelFact.Link(body.charAt(link)));
        return gathered(linked, Arrays.asList(body.substring(0, link).split("/", -1)));
    }

    private Outcome<List<LabelFact>> primary(List<String> parts) {
        String device = parts.get(0);
        if (!PRIMARY.matcher(device).matches()) {
            return reading.refuse(LABEL_PART_UNKNOWN, device);
        }
        return gathered(List.of(new LabelFact.Device(Issuer.HIBC, device)), parts.subList(1, parts.size()));
    }

    private Outcome<List<LabelFact>> gathered(List<LabelFact> first, List<String> parts) {
        List<Outcome<List<LabelFact>>> read = new ArrayList<>(List.of(Outcome.ready(first)));
        parts.forEach(part -> read.add(secondary.facts(part)));
        return Gathered.of(read);
    }
}
