package org.lensward.lens.label;

import static org.lensward.finding.FindingCode.LABEL_AMBIGUOUS;
import static org.lensward.finding.FindingCode.LABEL_EMPTY;
import static org.lensward.finding.FindingCode.LABEL_NOT_RECOGNISED;
import static org.lensward.finding.FindingCode.LABEL_TRUNCATED;

import java.util.Set;
import org.lensward.finding.Outcome;

/**
 * One scan without what the scanner added: its line end and the symbology identifier in front (ISO/IEC 15424).
 *
 * @param text the barcode's content
 * @param form how to read it
 */
record Scan(String text, Form form) {

    /** Which grammar a scan follows. */
    enum Form {
        /** GS1 as the barcode carries it. */
        ELEMENTS,
        /** GS1 as printed for people, identifiers in brackets. */
        BRACKETED,
        HIBC
    }

    /** GS1-128, GS1 DataMatrix, GS1 QR Code, GS1 DataBar and composite, GS1 DotCode. */
    private static final Set<String> GS1_SYMBOLS = Set.of("]C1", "]d2", "]Q3", "]e0", "]J1");

    private static final String EAN_13 = "]E0";

    static Outcome<Scan> of(String scanned, Reading reading) {
        String text = scanned.replaceAll("^\\s+|[\\r\\n\\t]+$", "");
        if (text.isBlank()) {
            return reading.refuse(LABEL_EMPTY);
        }
        if (text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0) {
            return reading.refuse(LABEL_AMBIGUOUS, "it has several lines");
        }
        if (!text.startsWith("]")) {
            return bare(text, reading);
        }
        return text.length() <= 3
                ? reading.refuse(LABEL_TRUNCATED, "nothing follows the symbology identifier")
                : identified(text.substring(0, 3), text.substring(3), reading);
    }

    /** The scanner says which symbol it read; GS1 data stand in GS1 symbols alone. */
    private static Outcome<Scan> identified(String symbol, String text, Reading reading) {
        if (GS1_SYMBOLS.contains(symbol)) {
            return Outcome.ready(new Scan(text, Form.ELEMENTS));
        }
        if (symbol.equals(EAN_13)) {
            return Outcome.ready(new Scan("010" + text, Form.ELEMENTS));
        }
        return isHibc(text)
                ? Outcome.ready(new Scan(text, Form.HIBC))
                : reading.refuse(LABEL_NOT_RECOGNISED, "the scanner read it from a plain barcode, " + symbol);
    }

    private static Outcome<Scan> bare(String text, Reading reading) {
        char first = ElementString.separated(text).charAt(0);
        if (isHibc(text)) {
            return Outcome.ready(new Scan(text, Form.HIBC));
        }
        if (text.matches("\\(\\d.*")) {
            return Outcome.ready(new Scan(text, Form.BRACKETED));
        }
        if (first >= '0' && first <= '9' || first == ElementString.SEPARATOR) {
            return Outcome.ready(new Scan(text, Form.ELEMENTS));
        }
        boolean otherKind = first == '=' || first >= 'A' && first <= 'Z' || first >= 'a' && first <= 'z';
        return otherKind
                ? reading.refuse(LABEL_NOT_RECOGNISED, "no label of these begins with " + first)
                : reading.garbled(text, 0);
    }

    private static boolean isHibc(String text) {
        return text.startsWith("+") || text.startsWith("*+");
    }
}
