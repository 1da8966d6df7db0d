package org.lensward.record;

/**
 * Text that FHIR can carry in each of its formats: R4 asks strings to be free of control characters other than tab and line ends, and XML
 * has no way to write them. A scanner's group separator, U+001D, is written as its picture, U+241D.
 */
public final class Legible {

    private static final int PICTURES = 0x2400;

    private Legible() {}

    /** The text with a picture in place of each control character (Unicode, "Control Pictures", U+2400 to U+241F). */
    public static String text(String text) {
        StringBuilder legible = new StringBuilder(text.length());
        text.chars().map(each -> isControl(each) ? PICTURES + each : each).forEach(each -> legible.append((char) each));
        return legible.toString();
    }

    private static boolean isControl(int character) {
        return character < ' ' && character != '\t' && character != '\n' && character != '\r';
    }
}
