package org.lensward.board;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.RiskAssessment;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;

/** The theatre list as the record holds it: every active booking with its plan, or still without. */
public final class TheatreList {

    /** What to ask the record for it. */
    public static final List<String> QUESTIONS = StoredPlan.QUESTIONS;

    private TheatreList() {}

    /** The list in the order of the day. */
    public static List<TheatreLine> of(Bundle gathered) {
        Shelf shelf = new Shelf(gathered);
        return StoredPlan.all(shelf)
                .map(stored -> line(shelf, stored))
                .sorted(Comparator.comparing(TheatreLine::start).thenComparing(TheatreLine::booking))
                .toList();
    }

    private static TheatreLine line(Shelf shelf, StoredPlan stored) {
        return new TheatreLine(
                start(shelf, stored.booking()),
                shelf.find(Patient.class, stored.booking().getSubject())
                        .map(TheatreList::initials)
                        .orElse("?"),
                stored.booking().getIdElement().getIdPart(),
                stored.eye(),
                stored.primary().map(TheatreList::lens).orElse("-"),
                stored.chosen().map(TheatreList::predicted).orElse("-"),
                stored.risk().map(TheatreList::risk).orElse("-"),
                stored.plan().map(StoredPlan::state).orElse("planning"),
                stored.issues().stream()
                        .findFirst()
                        .map(DetectedIssue::getDetail)
                        .orElse(""));
    }

    static String start(Shelf shelf, ServiceRequest booking) {
        return shelf.all(Appointment.class)
                .filter(each -> Shelf.refers(each.getBasedOn(), booking))
                .map(each -> each.getStartElement()
                        .getValueAsString()
                        .replace('T', ' ')
                        .substring(0, 16))
                .findFirst()
                .orElseGet(() -> booking.hasOccurrenceDateTimeType()
                        ? booking.getOccurrenceDateTimeType().getValueAsString()
                        : "no date");
    }

    private static String initials(Patient patient) {
        HumanName name = patient.getNameFirstRep();
        return Stream.concat(name.getGiven().stream().map(Object::toString), Stream.ofNullable(name.getFamily()))
                .filter(part -> !part.isBlank())
                .map(part -> part.substring(0, 1).toUpperCase(Locale.ROOT))
                .collect(Collectors.joining());
    }

    private static String lens(DeviceRequest request) {
        return request.getCodeCodeableConcept().getText() + " " + StoredPlan.power(request);
    }

    private static String predicted(Observation observation) {
        return String.format(
                Locale.ROOT, "%+.2f D", observation.getValueQuantity().getValue());
    }

    private static String risk(RiskAssessment assessment) {
        return assessment.getPredictionFirstRep().getProbabilityDecimalType().getValueAsString() + " %";
    }
}
