package org.lensward.outcome.constant;

import java.time.LocalDate;

/**
 * A proposal that a clinician took on: versioned data, never overwritten, only followed by another.
 *
 * @param proposal what was adopted; its {@link Proposal#proposed()} is the constant from then on
 * @param clinician who answers for it
 * @param on the day
 * @param version of the hospital's constants that has it
 */
public record Adoption(Proposal proposal, String clinician, LocalDate on, String version) {

    public Adoption {
        if (clinician.isBlank() || version.isBlank()) {
            throw new IllegalArgumentException("An adoption names a clinician and a version");
        }
    }
}
