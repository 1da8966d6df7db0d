package org.lensward.optics;

import java.util.List;
import org.lensward.quantity.Millimetres;

/**
 * The formulas a policy prefers for eyes of one range of length.
 *
 * @param from shortest eye, inclusive
 * @param to longest eye, exclusive
 * @param preferred in order of preference
 * @param source guideline or paper
 */
public record FormulaBand(Millimetres from, Millimetres to, List<FormulaName> preferred, String source) {

    public FormulaBand {
        preferred = List.copyOf(preferred);
        if (preferred.isEmpty() || source.isBlank() || from.compareTo(to) >= 0) {
            throw new IllegalArgumentException("A band has a range, formulas and a source: " + from + " to " + to);
        }
    }

    boolean holds(Millimetres length) {
        return from.compareTo(length) <= 0 && length.compareTo(to) < 0;
    }
}
