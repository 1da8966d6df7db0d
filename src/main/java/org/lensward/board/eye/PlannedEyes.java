package org.lensward.board.eye;

import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.board.api.Bookings;
import org.lensward.board.api.Seen;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.BundlePlanning.Planned;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.check.LensChecks;

/** Each eye's plan as the record supports it at this moment. Planning is pure and quick, so a page shows the plan's very numbers. */
public final class PlannedEyes {

    private final Bookings bookings;
    private final LensChecks checks;
    private final BundlePlanning planning;

    public PlannedEyes(Bookings bookings, LensChecks checks, BundlePlanning planning) {
        this.bookings = bookings;
        this.checks = checks;
        this.planning = planning;
    }

    /** The eye of a booking, such as {@code ServiceRequest/b1}. */
    PlannedEye of(String booking) {
        Bundle gathered = bookings.gather(booking);
        Planned planned = planning.plan(gathered).stream()
                .filter(each -> Shelf.name(each.booked().request()).equals(booking))
                .findFirst()
                .orElseThrow(() ->
                        new UnreadableRecord(IssueType.NOTFOUND, booking, "It is no active booking of lens surgery."));
        return new PlannedEye(gathered, planned, Seen.of(gathered, booking, checks), checks.find(gathered, booking));
    }
}
