package org.lensward.board.cds;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.lensward.record.Changes;
import org.lensward.record.PlanKey;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;

/** One patient's bookings that are still to be operated on, each with its plan. */
final class PatientPlans {

    /** What to send, or ask the record for. */
    static final Map<String, String> TEMPLATES = new TreeMap<>(Map.of(
            "bookings",
            "ServiceRequest?patient={{context.patientId}}&status=active&code=" + Changes.LENS_SURGERY_TOKENS
                    + "&_count=100",
            "plans",
            "Procedure?patient={{context.patientId}}&_count=500",
            "lenses",
            "DeviceRequest?patient={{context.patientId}}&status=active&_count=500",
            "findings",
            "DetectedIssue?patient={{context.patientId}}&_count=500"));

    private static final Set<ProcedureStatus> BEGUN = EnumSet.of(
            ProcedureStatus.INPROGRESS, ProcedureStatus.ONHOLD, ProcedureStatus.STOPPED, ProcedureStatus.COMPLETED);

    private PatientPlans() {}

    /** In the order of their days; what was sent of another patient is left out. */
    static List<StoredPlan> of(Bundle gathered, String patientId) {
        Shelf shelf = new Shelf(gathered);
        return StoredPlan.all(shelf)
                .filter(each -> each.booking().getStatus() == ServiceRequestStatus.ACTIVE)
                .filter(each -> Shelf.name(each.booking().getSubject()).equals("Patient/" + patientId))
                .filter(each -> !begun(shelf, each.booking()))
                .sorted(Comparator.comparing(StoredPlan::booking, Comparator.comparing(BookedDay::of))
                        .thenComparing(each -> Shelf.name(each.booking())))
                .toList();
    }

    private static boolean begun(Shelf shelf, ServiceRequest booking) {
        String plan = PlanKey.of(Shelf.name(booking)).planId();
        return shelf.find(Procedure.class, new Reference("Procedure/" + plan))
                .filter(each -> BEGUN.contains(each.getStatus()))
                .isPresent();
    }
}
