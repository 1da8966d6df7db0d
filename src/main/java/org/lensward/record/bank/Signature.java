package org.lensward.record.bank;

import java.time.Instant;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.Reference;

/**
 * Who answers for an entry, and when it was made.
 *
 * @param who as the record refers to the person, such as {@code Practitioner/p1}, or a name
 * @param at when
 */
public record Signature(String who, Instant at) {

    private static final Pattern REFERENCE = Pattern.compile("[A-Z][A-Za-z]+/[A-Za-z0-9.-]{1,64}");

    public Signature {
        if (who.isBlank()) {
            throw new IllegalArgumentException("An entry is signed");
        }
    }

    Reference reference() {
        return reference(who);
    }

    /** A reference where it reads as one, else a name to display. */
    public static Reference reference(String who) {
        return isReference(who) ? new Reference(who) : new Reference().setDisplay(who);
    }

    static boolean isReference(String who) {
        return REFERENCE.matcher(who).matches();
    }

    /** Names nobody: an entry may be logged. */
    @Override
    public String toString() {
        return "Signature[" + at + "]";
    }
}
