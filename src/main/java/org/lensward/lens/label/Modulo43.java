package org.lensward.lens.label;

/**
 * The check character of HIBC labels (ANSI/HIBC 2.6 appendix B): the sum of all characters' values, modulo 43. It sees every wrong
 * character and no exchange of two.
 */
final class Modulo43 {

    /** Every character of a HIBC label; its place is its value. */
    static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-. $/+%";

    private Modulo43() {}

    /** The check character of characters that are all of the alphabet. */
    static char of(String text) {
        return ALPHABET.charAt(text.chars().map(ALPHABET::indexOf).sum() % ALPHABET.length());
    }
}
