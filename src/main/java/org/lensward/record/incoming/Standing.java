package org.lensward.record.incoming;

import java.util.Date;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.finding.FindingCode;
import org.lensward.record.Shelf;

/** What stands in the record under an id against what comes in under it: the newer stands, and keeps what only the record knew. */
public final class Standing {

    private Standing() {}

    /** Whether what stands was sent later than what comes: messages overtake each other. */
    public static boolean isNewer(Resource standing, Resource coming) {
        Optional<Date> stood = sent(standing);
        Optional<Date> came = sent(coming);
        return stood.isPresent() && came.isPresent() && stood.get().after(came.get());
    }

    private static Optional<Date> sent(Resource resource) {
        if (resource instanceof Observation observation) {
            return Optional.ofNullable(observation.getIssued());
        }
        if (resource instanceof ServiceRequest request) {
            return Optional.ofNullable(request.getAuthoredOn());
        }
        return resource instanceof Appointment appointment
                ? Optional.ofNullable(appointment.getCreated())
                : Optional.empty();
    }

    /** A result or a booking never changes hands. */
    public static void checkOwner(Resource standing, Patient patient) {
        if (!Shelf.refers(owners(standing), patient)) {
            String name = Shelf.name(standing);
            throw new RefusedInput(FindingCode.PATIENT_CONTRADICTED, name, name);
        }
    }

    private static List<Reference> owners(Resource resource) {
        if (resource instanceof Observation observation) {
            return List.of(observation.getSubject());
        }
        if (resource instanceof ServiceRequest request) {
            return List.of(request.getSubject());
        }
        return resource instanceof Appointment appointment
                ? appointment.getParticipant().stream()
                        .map(Appointment.AppointmentParticipantComponent::getActor)
                        .toList()
                : List.of();
    }

    /** Gives it to its patient. */
    public static void giveTo(Resource resource, Patient patient) {
        Reference reference = new Reference(Shelf.name(patient));
        if (resource instanceof Observation observation) {
            observation.setSubject(reference);
        } else if (resource instanceof ServiceRequest request) {
            request.setSubject(reference);
        } else if (resource instanceof Appointment appointment) {
            appointment.getParticipantFirstRep().setActor(reference);
        }
    }

    /** What comes, over what stands: of a booking only what a message says is changed; target, lens and surgeon stay. */
    public static Resource over(Resource standing, Resource coming) {
        if (!(standing instanceof ServiceRequest stood) || !(coming instanceof ServiceRequest came)) {
            return coming;
        }
        ServiceRequest merged = stood.copy();
        merged.setId(came.getIdElement());
        merged.getMeta().setVersionId(null).setLastUpdated(null);
        merged.setStatus(came.getStatus());
        merged.setAuthoredOnElement(came.getAuthoredOnElement());
        if (came.hasCode() && came.getStatus() == ServiceRequest.ServiceRequestStatus.ACTIVE) {
            merged.setCode(came.getCode());
        }
        if (came.hasBodySite()) {
            merged.setBodySite(came.getBodySite());
        }
        if (came.hasOccurrence()) {
            merged.setOccurrence(came.getOccurrence());
        }
        return merged;
    }
}
