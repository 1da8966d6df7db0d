package org.lensward.record;

import java.util.List;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.finding.Evidence;
import org.lensward.plan.EyePlan;

/**
 * What every resource of one plan shares.
 *
 * @param key its lasting name
 * @param subject the patient
 * @param bookedAs the booking
 * @param plan the plan being written
 */
record PlanContext(PlanKey key, Reference subject, Reference bookedAs, EyePlan plan) {

    Reference patient() {
        return subject.copy();
    }

    Reference booking() {
        return bookedAs.copy();
    }

    /** The planned eye as a body site. */
    CodeableConcept eye() {
        return PlanResources.bodySite(plan.booking().eye());
    }

    /** The day of the operation, where it has one. */
    DateTimeType operation() {
        return plan.booking()
                .operation()
                .map(day -> new DateTimeType(day.toString()))
                .orElseGet(DateTimeType::new);
    }

    static List<Reference> references(List<Evidence> evidence) {
        return evidence.stream()
                .map(Evidence::resource)
                .distinct()
                .map(Reference::new)
                .toList();
    }
}
