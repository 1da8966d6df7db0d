package org.lensward.risk.preparation;

import java.util.Set;
import org.lensward.eye.Allergen;
import org.lensward.eye.Sign;

/**
 * A drug or solution of the hospital's policy.
 *
 * @param name the substance, never a brand
 * @param dose with its unit and way of giving
 * @param contains what an allergy to it forbids
 * @param crossReacts substances that are not in it but forbid it after a <em>severe</em> reaction, such as penicillin for cefuroxime
 * @param unsuitable signs that forbid it
 * @param source of the dose and of its place in the list
 */
public record Agent(
        String name,
        String dose,
        Set<Allergen> contains,
        Set<Allergen> crossReacts,
        Set<Sign> unsuitable,
        String source) {

    public Agent {
        contains = Set.copyOf(contains);
        crossReacts = Set.copyOf(crossReacts);
        unsuitable = Set.copyOf(unsuitable);
        if (name.isBlank() || source.isBlank()) {
            throw new IllegalArgumentException("An agent has a name and a source");
        }
    }

    /** As a list says it: name and dose. */
    @Override
    public String toString() {
        return dose.isBlank() ? name : name + " " + dose;
    }
}
