package org.lensward.board.cds;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Severity;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.BundlePlanning.Planned;
import org.lensward.record.Changes;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;
import org.lensward.record.UnreadableRecord;

/** Plans an order of lens surgery before it is signed, and says what would withhold its plan. Silent where nothing would. */
final class OrderSign implements HookService {

    private static final Map<String, String> TEMPLATES = templates();

    private final HookData data;
    private final BundlePlanning planning;

    OrderSign(HookData data, BundlePlanning planning) {
        this.data = data;
        this.planning = planning;
    }

    @Override
    public ServiceDescription description() {
        return new ServiceDescription(
                "order-sign",
                "What an order of lens surgery lacks",
                "Plans each order of cataract surgery that is about to be signed: critical where its lens plan would be"
                        + " withheld (no eye, no biometry), a warning where it would be provisional (no target refraction).",
                "order-sign",
                TEMPLATES);
    }

    @Override
    public List<Card> cards(HookCall call) {
        List<ServiceRequest> orders = orders(call);
        if (orders.isEmpty()) {
            return List.of();
        }
        Bundle gathered = data.gather(call, TEMPLATES);
        orders.forEach(order -> gathered.addEntry().setResource(order));
        List<String> names = orders.stream().map(Shelf::name).toList();
        return planned(gathered).stream()
                .filter(each -> names.contains(Shelf.name(each.booked().request())))
                .flatMap(each -> card(call, each).stream())
                .toList();
    }

    /** The drafts as bookings: active, and named where the client gave them no id yet. */
    private List<ServiceRequest> orders(HookCall call) {
        List<ServiceRequest> orders = new ArrayList<>();
        for (Bundle.BundleEntryComponent entry :
                data.read(Bundle.class, call.carried("draftOrders")).getEntry()) {
            if (entry.getResource() instanceof ServiceRequest order && Changes.isBooking(order) && isOpen(order)) {
                if (!Shelf.name(order.getSubject()).equals("Patient/" + call.patientId())) {
                    throw Refusal.malformed("An order is for another patient than context.patientId.");
                }
                if (!order.getIdElement().hasIdPart()) {
                    order.setId("draft-" + (orders.size() + 1));
                }
                orders.add(order.setStatus(ServiceRequestStatus.ACTIVE));
            }
        }
        return orders;
    }

    private static boolean isOpen(ServiceRequest order) {
        return order.getStatus() == ServiceRequestStatus.DRAFT || order.getStatus() == ServiceRequestStatus.ACTIVE;
    }

    private List<Planned> planned(Bundle gathered) {
        try {
            return planning.plan(gathered);
        } catch (UnreadableRecord patientMissing) {
            throw Refusal.withoutData("The patient of the order is not among what was sent or read.");
        }
    }

    private static Optional<Card> card(HookCall call, Planned planned) {
        List<Finding> withholding = found(planned, Severity.WITHHOLDS);
        if (!withholding.isEmpty()) {
            return Optional.of(
                    card(call, planned, Indicator.CRITICAL, "the lens plan would be withheld: ", withholding));
        }
        List<Finding> conditions = found(planned, Severity.CONDITION);
        return conditions.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        card(call, planned, Indicator.WARNING, "the lens plan would be provisional: ", conditions));
    }

    /** The day is given later, by an appointment: that it is missing is no fault of an order. */
    private static List<Finding> found(Planned planned, Severity severity) {
        return planned.plan().findings().stream()
                .filter(each -> each.severity() == severity)
                .filter(each -> each.code() != FindingCode.BOOKING_WITHOUT_DATE)
                .toList();
    }

    private static Card card(
            HookCall call, Planned planned, Indicator indicator, String state, List<Finding> findings) {
        String eye = planned.plan().booking().eye().map(side -> side + " eye").orElse("eye not stated");
        return Card.of(
                call + " " + planned.booked(),
                indicator,
                "Lens surgery, " + eye + ", " + state + findings.get(0).message(),
                Reason.list(findings.stream().map(Reason::of).toList()));
    }

    private static Map<String, String> templates() {
        Map<String, String> templates = new LinkedHashMap<>();
        templates.put("patient", "Patient/{{context.patientId}}");
        templates.put("measurements", "Observation?patient={{context.patientId}}&_count=500");
        templates.put("conditions", "Condition?patient={{context.patientId}}&_count=500");
        templates.put("operations", "Procedure?patient={{context.patientId}}&_count=500");
        templates.put(
                "medicationStatements",
                "MedicationStatement?patient={{context.patientId}}&_include=MedicationStatement:medication&_count=500");
        templates.put(
                "medicationRequests",
                "MedicationRequest?patient={{context.patientId}}&_include=MedicationRequest:medication&_count=500");
        templates.put("eyes", "BodyStructure?patient={{context.patientId}}&_count=500");
        templates.put("allergies", "AllergyIntolerance?patient={{context.patientId}}&_count=500");
        templates.put("lensModels", "DeviceDefinition?type=" + Systems.DEVICE_TYPE + "|intraocular-lens&_count=500");
        return templates;
    }
}
