package org.lensward.record;

import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.plan.PlanningCase;

/**
 * One booking as it stands in the record and as the core understands it.
 *
 * @param request the booking
 * @param patient whose eye it is
 * @param planning what the planner is given
 */
public record BookedCase(ServiceRequest request, Patient patient, PlanningCase planning) {

    @Override
    public String toString() {
        return planning.booking().evidence().resource();
    }
}
