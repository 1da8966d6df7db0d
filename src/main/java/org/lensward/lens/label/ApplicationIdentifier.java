package org.lensward.lens.label;

import java.util.stream.IntStream;

/**
 * What GS1 defines for one application identifier: the two to four digits that say what follows.
 *
 * @param code the digits
 * @param content digits alone, or letters too
 * @param shortest fewest characters that may follow
 * @param longest most characters that may follow
 * @param counted whether the length is predefined, so that no separator ends it
 */
record ApplicationIdentifier(String code, Content content, int shortest, int longest, boolean counted) {

    /** What may stand in an element. */
    enum Content {
        DIGITS("0123456789"),
        /** GS1 character set 82 (General Specifications section 7.11). */
        CHARACTERS("!\"%&'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz");

        private final String allowed;

        Content(String allowed) {
            this.allowed = allowed;
        }

        boolean allows(char character) {
            return allowed.indexOf(character) >= 0;
        }
    }

    /** The place of the first character that may not stand here, or the length of the text. */
    int firstForeign(String value) {
        return IntStream.range(0, value.length())
                .filter(place -> !content.allows(value.charAt(place)))
                .findFirst()
                .orElse(value.length());
    }

    @Override
    public String toString() {
        return "(" + code + ")";
    }
}
