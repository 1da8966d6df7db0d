package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.finding.Outcome;
import org.lensward.flow.AdapterSettings.RecordServer;
import org.lensward.flow.BookingName;
import org.lensward.flow.Gatherer;
import org.lensward.flow.RecordClient;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.bank.LensBank;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.LensChecks;

/** A booking in a running record: every action gathers anew and is posted; overtaken by another, it gathers again. */
final class RecordedBooking implements CheckedBooking {

    private static final int TRIES = 3;

    private final RecordClient client;
    private final LensBank bank;
    private final BookingName name;
    private final LensChecks checks;

    RecordedBooking(FhirContext fhir, URI record, String booking, LensChecks checks) {
        this.client = new RecordClient(fhir, new RecordServer(record, Duration.ofSeconds(30)));
        this.bank = new LensBank(fhir, client);
        this.checks = checks;
        this.name = new Shelf(client.gather(List.of(booking)))
                .find(ServiceRequest.class, new Reference(booking))
                .map(found -> new BookingName(booking, Shelf.name(found.getSubject())))
                .orElseThrow(
                        () -> new UnreadableRecord(IssueType.NOTFOUND, booking, "The record has no such booking."));
    }

    @Override
    public String booking() {
        return name.booking();
    }

    @Override
    public Outcome<List<LensUnit>> units() {
        return bank.units();
    }

    @Override
    public CheckAnswer act(BiFunction<LensChecks, Bundle, CheckAnswer> action) {
        for (int attempt = 0; attempt < TRIES; attempt++) {
            CheckAnswer answer = action.apply(checks, new Gatherer(client).gather(name.toString()));
            if (!(answer instanceof CheckAnswer.Write write)
                    || client.transact(write.transaction()).isPresent()) {
                return answer;
            }
        }
        throw new UnreadableRecord(
                IssueType.CONFLICT, booking(), "The record changed each time before the check was written; try again.");
    }

    @Override
    public Optional<Bundle> written() {
        return Optional.empty();
    }
}
