package org.lensward.board.fhir;

import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/** What {@code $plan} is given. */
sealed interface PlanInput {

    /**
     * Bookings and all that concerns them.
     *
     * @param bundle everything
     */
    record OfBundle(Bundle bundle) implements PlanInput {}

    /**
     * One booking of the record.
     *
     * @param booking its reference
     */
    record OfBooking(Reference booking) implements PlanInput {}

    /** Reads a Bundle, or Parameters with either {@code bundle} or {@code booking}. */
    static PlanInput read(Resource resource) {
        if (resource instanceof Bundle bundle) {
            return new OfBundle(bundle);
        }
        Given given = Given.of(resource).only("bundle", "booking");
        Optional<Bundle> bundle = given.resource("bundle", Bundle.class);
        Optional<Reference> booking = given.one("booking", Reference.class);
        if (bundle.isPresent() == booking.isPresent()) {
            throw given.refused("bundle or booking", "is to be given, exactly one of them");
        }
        return bundle.<PlanInput>map(OfBundle::new).orElseGet(() -> new OfBooking(booking.orElseThrow()));
    }
}
