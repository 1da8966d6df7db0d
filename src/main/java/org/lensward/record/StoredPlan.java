package org.lensward.record;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DetectedIssue.DetectedIssueStatus;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.DeviceRequest.DeviceRequestStatus;
import org.hl7.fhir.r4.model.DeviceRequest.RequestIntent;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.RiskAssessment;
import org.hl7.fhir.r4.model.RiskAssessment.RiskAssessmentStatus;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.lensward.finding.FindingCode;
import org.lensward.quantity.Dioptres;
import org.lensward.risk.Bring;

/**
 * A booking with the plan that stands for it in the record.
 *
 * @param booking the booking
 * @param plan its plan, where there is one
 * @param kit the lenses requested, the one to implant first
 * @param chosen the prediction the lens was chosen by
 * @param risk the capsule-rupture risk
 * @param issues what was found, gravest first
 */
public record StoredPlan(
        ServiceRequest booking,
        Optional<Procedure> plan,
        List<DeviceRequest> kit,
        Optional<Observation> chosen,
        Optional<RiskAssessment> risk,
        List<DetectedIssue> issues) {

    /** What to ask the record for to see every stored plan. */
    public static final List<String> QUESTIONS = List.of(
            "ServiceRequest?status=active&code=" + Changes.LENS_SURGERY_TOKENS + "&_count=500",
            "Patient?_has:ServiceRequest:subject:status=active&_count=500",
            "Appointment?_count=500",
            "Procedure?status=preparation&_include=Procedure:based-on&_count=500",
            "DeviceRequest?status=active&_count=1000",
            "Observation?status=preliminary&code=" + Systems.MEASUREMENT + "|predicted-refraction&_count=1000",
            "RiskAssessment?_count=500",
            "DetectedIssue?_count=1000");

    /** Every active booking of lens surgery; one in a hospital's own code is told by its plan. */
    public static Stream<StoredPlan> all(Shelf shelf) {
        return shelf.all(ServiceRequest.class)
                .filter(each -> each.getStatus() == ServiceRequestStatus.ACTIVE)
                .map(booking -> of(shelf, booking))
                .filter(each -> each.plan().isPresent() || BookingReader.isLensSurgery(each.booking()));
    }

    private static StoredPlan of(Shelf shelf, ServiceRequest booking) {
        Identifier key = PlanKey.of(booking).identifier();
        return new StoredPlan(
                booking,
                shelf.all(Procedure.class)
                        .filter(each -> holds(each.getIdentifier(), key))
                        .filter(each -> each.getStatus() == ProcedureStatus.PREPARATION)
                        .findFirst(),
                shelf.all(DeviceRequest.class)
                        .filter(each -> holds(each.getIdentifier(), key))
                        .filter(each -> each.getStatus() == DeviceRequestStatus.ACTIVE)
                        .sorted(Comparator.comparing((DeviceRequest each) -> each.getIntent() != RequestIntent.PLAN)
                                .thenComparing(each -> each.getIdElement().getIdPart()))
                        .toList(),
                shelf.all(Observation.class)
                        .filter(each -> holds(each.getIdentifier(), key))
                        .filter(each -> each.getStatus() == ObservationStatus.PRELIMINARY)
                        .filter(StoredPlan::isChosen)
                        .findFirst(),
                shelf.all(RiskAssessment.class)
                        .filter(each -> holds(each.getIdentifier(), key))
                        .filter(each -> each.getStatus() == RiskAssessmentStatus.PRELIMINARY)
                        .findFirst(),
                shelf.all(DetectedIssue.class)
                        .filter(each -> holds(each.getIdentifier(), key))
                        .filter(each -> each.getStatus() == DetectedIssueStatus.PRELIMINARY)
                        .sorted(Comparator.comparing(DetectedIssue::getSeverity)
                                .thenComparing(Issues::rank)
                                .thenComparing(each -> each.getIdElement().getIdPart()))
                        .toList());
    }

    private static boolean holds(List<Identifier> identifiers, Identifier key) {
        return identifiers.stream().anyMatch(key::equalsDeep);
    }

    private static boolean isChosen(Observation prediction) {
        return prediction.getComponent().stream()
                .filter(component -> Codes.has(component.getCode(), Systems.MEASUREMENT, "chosen"))
                .anyMatch(component -> component.getValue() instanceof BooleanType chosen && chosen.booleanValue());
    }

    /** The lens to implant. */
    public Optional<DeviceRequest> primary() {
        return kit.stream()
                .filter(each -> each.getIntent() == RequestIntent.PLAN)
                .findFirst();
    }

    /** What has to lie ready for it. */
    public List<Bring> bring() {
        return plan.map(TheatreExtensions::brought).orElse(List.of());
    }

    /** The codes of everything found that we still know. */
    public Set<FindingCode> found() {
        return issues.stream()
                .flatMap(issue -> Codes.in(issue.getCode(), Systems.FINDING).stream())
                .flatMap(code -> Stream.of(FindingCode.values())
                        .filter(each -> each.code().equals(code)))
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(FindingCode.class)));
    }

    /** The labelled power of a requested lens. */
    public static Optional<Dioptres> labelled(DeviceRequest request) {
        return request.getParameter().stream()
                .filter(each -> Codes.has(each.getCode(), Systems.LENS_PARAMETER, "lens-power"))
                .map(each -> Dioptres.of(each.getValueQuantity().getValue().doubleValue()))
                .findFirst();
    }

    /** What a requested lens is for, as coded. */
    public static String role(DeviceRequest request) {
        return request.getParameter().stream()
                .filter(each -> Codes.has(each.getCode(), Systems.LENS_PARAMETER, "kit-role"))
                .flatMap(each -> Codes.in(each.getValueCodeableConcept(), Systems.KIT_ROLE).stream())
                .findFirst()
                .orElse("");
    }

    /** The planned eye in words. */
    public String eye() {
        return plan.map(each -> Codes.words(each.getBodySiteFirstRep())).orElse("-");
    }

    /** The plan's state as coded. */
    public static String state(Procedure plan) {
        return plan.getExtensionByUrl(PlanResources.STATE).getValue().primitiveValue();
    }

    /** The plan's fingerprint. */
    public static String fingerprint(Procedure plan) {
        return plan.getExtensionString(PlanResources.FINGERPRINT);
    }

    /** The labelled power of a requested lens, in words. */
    public static String power(DeviceRequest request) {
        return request.getParameter().stream()
                .filter(each -> Codes.has(each.getCode(), Systems.LENS_PARAMETER, "lens-power"))
                .map(each -> String.format(
                        Locale.ROOT, "%+.1f D", each.getValueQuantity().getValue()))
                .findFirst()
                .orElse("?");
    }
}
