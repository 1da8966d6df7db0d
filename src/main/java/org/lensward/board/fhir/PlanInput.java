package org.lensward.board.fhir;

import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Parameters;
import org.hl7.fhir.r4.model.Parameters.ParametersParameterComponent;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.springframework.http.HttpStatus;

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
        if (!(resource instanceof Parameters parameters)) {
            throw malformed("Expected a Bundle or Parameters, read a " + resource.fhirType() + ".");
        }
        List<ParametersParameterComponent> given = parameters.getParameter();
        if (given.size() != 1) {
            throw malformed("Give exactly one parameter: bundle (a Bundle) or booking (a Reference).");
        }
        return read(given.get(0));
    }

    private static PlanInput read(ParametersParameterComponent given) {
        if ("bundle".equals(given.getName()) && given.getResource() instanceof Bundle bundle) {
            return new OfBundle(bundle);
        }
        if ("booking".equals(given.getName()) && given.getValue() instanceof Reference booking) {
            return new OfBooking(booking);
        }
        throw malformed("The parameter is neither bundle (a Bundle) nor booking (a Reference).");
    }

    private static FhirRefusal malformed(String why) {
        return new FhirRefusal(HttpStatus.BAD_REQUEST, IssueType.INVALID, why);
    }
}
