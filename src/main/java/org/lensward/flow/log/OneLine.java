package org.lensward.flow.log;

import ch.qos.logback.classic.pattern.MessageConverter;
import ch.qos.logback.classic.spi.ILoggingEvent;

/**
 * A log message on one line. What would end the line, colour it or turn its reading order is shown as its number instead, so that text
 * from outside can neither forge a line nor hide one.
 */
public final class OneLine extends MessageConverter {

    @Override
    public String convert(ILoggingEvent event) {
        return of(super.convert(event));
    }

    /** The text with every control, format and separator character of Unicode, other than a blank, shown as its number. */
    static String of(String text) {
        StringBuilder line = new StringBuilder(text.length());
        text.codePoints().forEach(each -> {
            if (isHarmless(each)) {
                line.appendCodePoint(each);
            } else {
                line.append(String.format("\\u%04x", each));
            }
        });
        return line.toString();
    }

    private static boolean isHarmless(int character) {
        return switch (Character.getType(character)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.SURROGATE -> false;
            default -> true;
        };
    }
}
