package org.lensward.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.eye.Laterality;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/**
 * Something doubtful that was noticed before the record was read; it becomes a finding of every plan it concerns.
 *
 * @param code what was noticed
 * @param resource where
 * @param field the element inside the resource
 * @param particulars what fills the finding's message
 */
public record Doubt(FindingCode code, Resource resource, String field, List<String> particulars) {

    public Doubt {
        particulars = List.copyOf(particulars);
    }

    /** The findings that the doubts are for one booking; the same doubt in many places is one finding with much evidence. */
    static List<Finding> findings(List<Doubt> all, BookedEye booked, Shelf shelf, Evidences evidences) {
        Map<List<Object>, List<Doubt>> alike = new LinkedHashMap<>();
        all.stream().filter(doubt -> doubt.concerns(booked, shelf)).forEach(doubt -> alike.computeIfAbsent(
                        List.of(doubt.code, doubt.particulars), any -> new ArrayList<>())
                .add(doubt));
        return alike.values().stream().map(each -> finding(each, evidences)).toList();
    }

    private static Finding finding(List<Doubt> alike, Evidences evidences) {
        List<Evidence> evidence = alike.stream()
                .map(doubt -> evidences.of(doubt.resource, doubt.field))
                .sorted()
                .toList();
        Doubt first = alike.get(0);
        return Finding.of(first.code, evidence, first.particulars.toArray());
    }

    private boolean concerns(BookedEye booked, Shelf shelf) {
        if (resource instanceof ServiceRequest request) {
            return Shelf.name(request).equals(Shelf.name(booked.request));
        }
        boolean own = Changes.patient(resource)
                .map(Shelf.name(booked.patient)::equals)
                .orElse(true);
        Set<Laterality> eyes = eyes(shelf);
        return own && (eyes.isEmpty() || booked.eye.isEmpty() || eyes.contains(booked.eye.get()));
    }

    private Set<Laterality> eyes(Shelf shelf) {
        EyeCodes codes = new EyeCodes(shelf);
        if (resource instanceof Observation observation) {
            return codes.eyes(observation.getCode(), List.of(observation.getBodySite()));
        }
        if (resource instanceof Condition condition) {
            return codes.eyes(condition.getCode(), condition.getBodySite());
        }
        return resource instanceof Procedure procedure
                ? codes.eyes(procedure.getCode(), procedure.getBodySite())
                : codes.eyes(new CodeableConcept(), List.of());
    }

    /**
     * Whose plan it is.
     *
     * @param request the booking
     * @param patient whose eye
     * @param eye which eye, where the booking says it
     */
    record BookedEye(ServiceRequest request, Patient patient, Optional<Laterality> eye) {}
}
