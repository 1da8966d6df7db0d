package org.lensward.record.site;

import java.util.Locale;

/**
 * One code, unit, body site or identifier system of a record, and whether it is understood.
 *
 * @param state whether it is
 * @param onEye whether it sits, or may sit, on a measurement of an eye
 * @param where what it is there to say
 * @param what the code itself as {@code system|code}; never a text or a value
 * @param as what it is understood as and through what; empty if it is not
 * @param times how often it was met
 */
public record SurveyLine(State state, boolean onEye, String where, String what, String as, int times) {

    /** Whether Lensward understands something; what needs work comes first. */
    public enum State {
        AMBIGUOUS,
        UNMAPPED,
        MAPPED;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
