package org.lensward.board.fhir;

import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.flow.BookingName;
import org.lensward.flow.BookingPlanning;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.BundlePlanning.Planned;
import org.lensward.flow.Gatherer;
import org.lensward.record.Publication;
import org.springframework.http.HttpStatus;

/** The transaction that would be posted for what was asked. Writes nothing. */
final class AskedPlans {

    private final BundlePlanning planning;
    private final BookingPlanning bookings;
    private final BookingReference recorded;
    private final Gatherer gatherer;

    AskedPlans(BundlePlanning planning, BookingPlanning bookings, BookingReference recorded, Gatherer gatherer) {
        this.planning = planning;
        this.bookings = bookings;
        this.recorded = recorded;
        this.gatherer = gatherer;
    }

    /** One transaction for all bookings; without entries where the record already holds their plans. */
    Bundle plan(PlanInput input) {
        return input instanceof PlanInput.OfBooking one
                ? ofBooking(one.booking())
                : ofBundle(((PlanInput.OfBundle) input).bundle());
    }

    private Bundle ofBundle(Bundle bundle) {
        List<Planned> planned = planning.plan(bundle);
        if (planned.isEmpty()) {
            throw new FhirRefusal(
                    HttpStatus.UNPROCESSABLE_ENTITY,
                    IssueType.REQUIRED,
                    "There is no active booking of lens surgery (a ServiceRequest) in the Bundle.");
        }
        return transaction(planned.stream().map(Planned::publication).toList());
    }

    private Bundle ofBooking(Reference reference) {
        BookingName name = recorded.find(reference);
        String asQueued = name.toString();
        Publication publication = bookings.plan(gatherer.gather(asQueued), asQueued);
        if (publication instanceof Publication.Nothing nothing) {
            refuseWhatIsNoLongerPlanned(name, nothing.reason());
        }
        return transaction(List.of(publication));
    }

    private static void refuseWhatIsNoLongerPlanned(BookingName name, Publication.Reason reason) {
        if (reason == Publication.Reason.OPERATION_BEGUN || reason == Publication.Reason.NOT_ACTIVE) {
            throw new FhirRefusal(
                    HttpStatus.UNPROCESSABLE_ENTITY,
                    IssueType.BUSINESSRULE,
                    name.booking()
                            + (reason == Publication.Reason.NOT_ACTIVE
                                    ? " is not active; it is not planned."
                                    : " is being operated on or is over; its plan is left alone."));
        }
    }

    private static Bundle transaction(List<Publication> publications) {
        Bundle all = new Bundle().setType(BundleType.TRANSACTION);
        publications.forEach(each -> {
            if (each instanceof Publication.Write write) {
                write.bundle().getEntry().forEach(all::addEntry);
            }
        });
        return all;
    }
}
