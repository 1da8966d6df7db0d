package org.lensward.flow;

import java.util.List;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;

/**
 * A booking and its patient, as the queue carries them: names only, no data.
 *
 * @param booking such as {@code ServiceRequest/b1}
 * @param patient such as {@code Patient/p1}
 */
public record BookingName(String booking, String patient) {

    /**
     * Reads what {@link #toString()} prints.
     *
     * @throws UnreadableRecord where the booking names no patient of the record
     */
    public static BookingName parse(String text) {
        String[] parts = text.split(" ", -1);
        if (parts.length != 2 || !parts[0].startsWith("ServiceRequest/")) {
            throw new IllegalArgumentException("Not a booking and its patient: " + text);
        }
        if (!parts[1].startsWith("Patient/")) {
            throw new UnreadableRecord(
                    IssueType.REQUIRED,
                    parts[0] + ".subject",
                    "The booking names no patient of this record; name one.");
        }
        return new BookingName(parts[0], parts[1]);
    }

    /**
     * The booking of that name with its patient, as the record has it now.
     *
     * @throws UnreadableRecord where the record has no such booking
     */
    public static BookingName in(RecordClient record, String booking) {
        return new Shelf(record.gather(List.of(booking)))
                .find(ServiceRequest.class, new Reference(booking))
                .map(found -> new BookingName(booking, Shelf.name(found.getSubject())))
                .orElseThrow(
                        () -> new UnreadableRecord(IssueType.NOTFOUND, booking, "The record has no such booking."));
    }

    @Override
    public String toString() {
        return booking + " " + patient;
    }
}
