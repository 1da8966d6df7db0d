package org.lensward.flow;

/**
 * A booking and its patient, as the queue carries them: names only, no data.
 *
 * @param booking such as {@code ServiceRequest/b1}
 * @param patient such as {@code Patient/p1}
 */
public record BookingName(String booking, String patient) {

    /** Reads what {@link #toString()} prints. */
    public static BookingName parse(String text) {
        String[] parts = text.split(" ", -1);
        if (parts.length != 2 || !parts[0].startsWith("ServiceRequest/") || !parts[1].startsWith("Patient/")) {
            throw new IllegalArgumentException("Not a booking and its patient: " + text);
        }
        return new BookingName(parts[0], parts[1]);
    }

    @Override
    public String toString() {
        return booking + " " + patient;
    }
}
