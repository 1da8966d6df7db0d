package org.lensward.record.site;

import org.hl7.fhir.r4.model.Coding;

/**
 * One code as a hospital writes it.
 *
 * @param system the hospital's code system; empty where its codes name none
 * @param code the code itself
 */
public record LocalCode(String system, String code) implements Comparable<LocalCode> {

    public LocalCode {
        if (code.isBlank()) {
            throw new IllegalArgumentException("'" + system + "|' names no code");
        }
    }

    /** The inverse of {@link #toString}: {@code system|code}. */
    public static LocalCode parse(String text) {
        int bar = text.indexOf('|');
        if (bar < 0) {
            throw new IllegalArgumentException("'" + text + "' is not system|code");
        }
        return new LocalCode(text.substring(0, bar), text.substring(bar + 1));
    }

    Coding coding() {
        return system.isEmpty()
                ? new Coding().setCode(code)
                : new Coding().setSystem(system).setCode(code);
    }

    @Override
    public int compareTo(LocalCode other) {
        return toString().compareTo(other.toString());
    }

    @Override
    public String toString() {
        return system + "|" + code;
    }
}
