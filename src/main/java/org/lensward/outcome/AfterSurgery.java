package org.lensward.outcome;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What followed an operation.
 *
 * @param complicationsTold whether anyone recorded how the operation went; without it, no complication means nothing
 * @param complications during the operation and after it
 * @param exchangedOn the day the lens was exchanged, turned or taken out again, if it was
 * @param refractions of the person's eyes, any day, any order
 * @param opening of the capsule, where it was measured
 */
public record AfterSurgery(
        boolean complicationsTold,
        Set<Complication> complications,
        Optional<LocalDate> exchangedOn,
        List<Refraction> refractions,
        Optional<Opening> opening) {

    public AfterSurgery {
        complications = Set.copyOf(complications);
        refractions = List.copyOf(refractions);
        if (!complicationsTold && !complications.isEmpty()) {
            throw new IllegalArgumentException("Complications that nobody told: " + complications);
        }
    }
}
