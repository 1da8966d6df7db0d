package org.lensward.board.api;

import java.util.List;
import java.util.function.BiFunction;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.flow.BookingName;
import org.lensward.flow.Gatherer;
import org.lensward.flow.RecordClient;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.bank.RecordName;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.LensChecks;
import org.lensward.record.site.SiteSearch;

/** Bookings in the running record: every action gathers anew and is posted; overtaken by another, it gathers again. */
public final class Bookings {

    private static final int TRIES = 3;

    private final RecordClient client;
    private final Gatherer gatherer;
    private final LensChecks checks;

    /**
     * Of that record.
     *
     * @param client the record
     * @param search what to ask it for
     * @param checks how its lens checks are acted on
     */
    public Bookings(RecordClient client, SiteSearch search, LensChecks checks) {
        this.client = client;
        this.gatherer = new Gatherer(client, search);
        this.checks = checks;
    }

    /** The booking's full name. */
    public static String name(String booking) {
        return RecordName.of("ServiceRequest", booking)
                .orElseThrow(() -> new UnreadableRecord(
                        IssueType.VALUE, "booking", "A booking's id has letters, digits, '-' and '.'."));
    }

    /**
     * All that concerns the booking.
     *
     * @throws UnreadableRecord where the record has no such booking
     */
    public Bundle gather(String booking) {
        return gatherer.gather(known(booking).toString());
    }

    /** Takes the action on what is there now, and posts what it writes. */
    public CheckAnswer act(String booking, BiFunction<LensChecks, Bundle, CheckAnswer> action) {
        BookingName known = known(booking);
        for (int attempt = 0; attempt < TRIES; attempt++) {
            CheckAnswer answer = action.apply(checks, gatherer.gather(known.toString()));
            if (!(answer instanceof CheckAnswer.Write write)
                    || client.transact(write.transaction()).isPresent()) {
                return answer;
            }
        }
        throw new UnreadableRecord(
                IssueType.CONFLICT, booking, "The record changed each time before the check was written; try again.");
    }

    private BookingName known(String booking) {
        return new Shelf(client.gather(List.of(booking)))
                .find(ServiceRequest.class, new Reference(booking))
                .map(found -> new BookingName(booking, Shelf.name(found.getSubject())))
                .orElseThrow(
                        () -> new UnreadableRecord(IssueType.NOTFOUND, booking, "The record has no such booking."));
    }
}
