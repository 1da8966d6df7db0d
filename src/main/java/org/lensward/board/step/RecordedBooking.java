package org.lensward.board.step;

import ca.uhn.fhir.context.FhirContext;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.board.api.Bookings;
import org.lensward.finding.Outcome;
import org.lensward.flow.Gatherer;
import org.lensward.flow.RecordClient;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.bank.LensBank;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.LensChecks;
import org.lensward.record.site.SiteSearch;

/** A booking in a running record. */
public final class RecordedBooking implements CheckedBooking {

    private final Bookings bookings;
    private final LensBank bank;
    private final String booking;

    public RecordedBooking(FhirContext fhir, URI record, String booking, SiteSearch search, LensChecks checks) {
        RecordClient client = RecordClient.at(record, fhir);
        this.bookings = new Bookings(client, new Gatherer(client, search), checks);
        this.bank = new LensBank(fhir, client);
        this.booking = booking;
    }

    @Override
    public String booking() {
        return booking;
    }

    @Override
    public Outcome<List<LensUnit>> units() {
        return bank.units();
    }

    @Override
    public CheckAnswer act(BiFunction<LensChecks, Bundle, CheckAnswer> action) {
        return bookings.act(booking, action);
    }

    @Override
    public Optional<Bundle> written() {
        return Optional.empty();
    }
}
