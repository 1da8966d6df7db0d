package org.lensward.flow.auth;

import java.util.Arrays;
import java.util.List;

/**
 * The least that the adapter can do its work with, as {@code fhir-profiles/capability-statements/needed-from-record.json} lists it.
 * Nothing is ever deleted. An update may create ({@code PUT} under a lasting id), which SMART counts as {@code c} and {@code u}.
 */
final class LeastScopes {

    static final List<String> ALL = List.of(
            "system/AdverseEvent.s",
            "system/AllergyIntolerance.s",
            "system/Appointment.crus",
            "system/AuditEvent.cu",
            "system/BodyStructure.s",
            "system/Condition.s",
            "system/DetectedIssue.cus",
            "system/Device.crus",
            "system/DeviceDefinition.crus",
            "system/DeviceRequest.cus",
            "system/DeviceUseStatement.cus",
            "system/Location.s",
            "system/MeasureReport.cru",
            "system/MedicationRequest.s",
            "system/MedicationStatement.s",
            "system/Observation.crus",
            "system/Patient.rs",
            "system/Procedure.crus",
            "system/Provenance.cus",
            "system/RiskAssessment.cus",
            "system/ServiceRequest.crus",
            "system/SupplyRequest.cus",
            "system/Task.cus");

    private LeastScopes() {}

    /** What was asked for and is not granted, each with only the rights that are lacking. */
    static List<Scope> lacking(List<Scope> asked, String granted) {
        List<Scope> given = Arrays.stream(granted.split(" "))
                .filter(Scope::isOne)
                .map(Scope::parse)
                .toList();
        return asked.stream()
                .map(each -> lacking(each, given))
                .filter(each -> !each.rights().isEmpty())
                .toList();
    }

    private static Scope lacking(Scope asked, List<Scope> given) {
        StringBuilder rights = new StringBuilder();
        asked.rights()
                .chars()
                .filter(right -> given.stream().noneMatch(each -> each.allows(asked, right)))
                .forEach(right -> rights.append((char) right));
        return new Scope(asked.type(), rights.toString(), asked.narrowed());
    }
}
