package org.lensward.outcome;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lensward.quantity.Millimetres;
import org.lensward.risk.opening.OpeningTechnique;

/**
 * The opening of the capsule, planned, made and followed.
 *
 * @param technique by which it was made, where that was recorded
 * @param planned diameter
 * @param made as it was measured on the day
 * @param later as it was measured at follow-ups, any order
 */
public record Opening(
        Optional<OpeningTechnique> technique, Optional<Millimetres> planned, Optional<Seen> made, List<Seen> later) {

    public Opening {
        later = List.copyOf(later);
    }

    /**
     * One measurement.
     *
     * @param on the day
     * @param diameter of the opening, above nought
     * @param decentration of its centre from the lens's axis, whichever way; nought or more
     */
    public record Seen(LocalDate on, Millimetres diameter, Optional<Millimetres> decentration) {
        public Seen {
            if (diameter.value() <= 0 || decentration.stream().anyMatch(off -> off.value() < 0)) {
                throw new IllegalArgumentException("No opening is " + diameter + " wide, " + decentration + " off");
            }
        }
    }
}
