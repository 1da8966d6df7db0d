package org.lensward.board.fhir;

import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.board.api.Bookings;
import org.lensward.flow.BookingName;
import org.lensward.record.Changes;
import org.lensward.record.Shelf;
import org.springframework.http.HttpStatus;

/** Finds the booking a reference names, in the record. */
final class BookingReference {

    private static final Pattern BOOKING = Pattern.compile("ServiceRequest/[A-Za-z0-9\\-.]{1,64}");

    private final Bookings bookings;
    private final RecordAddress record;

    BookingReference(Bookings bookings, RecordAddress record) {
        this.bookings = bookings;
        this.record = record;
    }

    /** The booking and its patient; refused where it is not there or books no lens surgery. */
    BookingName find(Reference reference) {
        String booking = Shelf.name(reference);
        if (!BOOKING.matcher(booking).matches()) {
            throw new FhirRefusal(
                    HttpStatus.BAD_REQUEST, IssueType.VALUE, "booking is no reference to a ServiceRequest.");
        }
        if (!record.holds(reference)) {
            throw notFound("The booking is on another server than the record.");
        }
        ServiceRequest request =
                bookings.find(booking).orElseThrow(() -> notFound("The record has no " + booking + "."));
        String patient = Shelf.name(request.getSubject());
        if (!Changes.isBooking(request) || !patient.startsWith("Patient/")) {
            throw new FhirRefusal(
                    HttpStatus.UNPROCESSABLE_ENTITY,
                    IssueType.BUSINESSRULE,
                    booking + " does not book a patient's lens surgery.");
        }
        return new BookingName(booking, patient);
    }

    private static FhirRefusal notFound(String why) {
        return new FhirRefusal(HttpStatus.NOT_FOUND, IssueType.NOTFOUND, why);
    }
}
