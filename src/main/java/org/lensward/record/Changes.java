package org.lensward.record;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.PrimitiveType;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;

/** Whom a changed resource concerns. */
public final class Changes {

    /** The codes of the bookings we plan, as a search value. */
    public static final String LENS_SURGERY_TOKENS = BookingReader.LENS_SURGERY.stream()
            .map(code -> Systems.SNOMED + "|" + code)
            .collect(Collectors.joining(","));

    /** What we write ourselves; to plan because of it would never end. */
    private static final Set<String> OURS =
            Set.of(Systems.profile("eye-plan"), Systems.profile("predicted-refraction"));

    /** The codes of the bookings we plan, in SNOMED CT. */
    public static final List<String> LENS_SURGERY = BookingReader.LENS_SURGERY;

    /** The code by which a lens model is known, in our device types. */
    public static final String LENS_MODEL = LensCodes.LENS;

    private Changes() {}

    /** Whether we wrote it. */
    public static boolean isOurs(Resource resource) {
        return resource.getMeta().getProfile().stream()
                .map(PrimitiveType::getValue)
                .anyMatch(OURS::contains);
    }

    /** Whether the request books lens surgery. */
    public static boolean isBooking(ServiceRequest request) {
        return BookingReader.isLensSurgery(request);
    }

    /** A new or changed lens model may change any plan. */
    public static boolean concernsEveryBooking(Resource resource) {
        return resource instanceof DeviceDefinition;
    }

    /** The bookings that the resource names. */
    public static Stream<String> bookings(Resource resource) {
        List<Reference> named = resource instanceof Appointment appointment ? appointment.getBasedOn() : List.of();
        return named.stream().map(Shelf::name).filter(name -> name.startsWith("ServiceRequest/"));
    }

    /** The patient the resource speaks of. */
    public static Optional<String> patient(Resource resource) {
        if (resource instanceof Patient patient) {
            return Optional.of(Shelf.name(patient));
        }
        return subject(resource).map(Shelf::name).filter(name -> name.startsWith("Patient/"));
    }

    private static Optional<Reference> subject(Resource resource) {
        return resource instanceof ServiceRequest
                ? Optional.empty() // a booking concerns itself, not the patient's other booking
                : Stream.of("subject", "patient")
                        .map(resource::getNamedProperty)
                        .filter(Objects::nonNull)
                        .flatMap(property -> property.getValues().stream())
                        .filter(Reference.class::isInstance)
                        .map(Reference.class::cast)
                        .findFirst();
    }
}
