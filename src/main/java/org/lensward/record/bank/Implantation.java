package org.lensward.record.bank;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * What happened at the table.
 *
 * @param booking the booking, such as {@code ServiceRequest/b1}
 * @param unit the carton whose lens is in the eye, such as {@code Device/unit-1}
 * @param surgeon as the record refers to the surgeon, or a name
 * @param hospital as the record refers to the hospital ({@code Organization/h1}), or a name
 * @param at when, in the hospital's time: its day is the one the expiry is held against
 * @param deviation why the lens is not the plan's primary one, where it is not
 */
public record Implantation(
        String booking,
        String unit,
        String surgeon,
        String hospital,
        OffsetDateTime at,
        Optional<Deviation> deviation) {

    public Implantation {
        RecordName.require("ServiceRequest", booking);
        RecordName.require("Device", unit);
    }

    /**
     * Why another lens was chosen.
     *
     * @param clinician who decided, as the record refers to the person, or a name
     * @param reason in words
     */
    public record Deviation(String clinician, String reason) {

        public Deviation {
            if (clinician.isBlank() || reason.isBlank()) {
                throw new IllegalArgumentException("A deviation has a clinician and a reason");
            }
        }

        /** Names nobody. */
        @Override
        public String toString() {
            return "Deviation";
        }
    }

    /** Names nobody. */
    @Override
    public String toString() {
        return "Implantation[" + booking + ", " + unit + "]";
    }
}
