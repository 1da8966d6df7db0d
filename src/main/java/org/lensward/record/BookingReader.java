package org.lensward.record;

import static org.lensward.finding.FindingCode.BOOKING_FOR_BOTH_EYES;
import static org.lensward.finding.FindingCode.BOOKING_WITHOUT_DATE;
import static org.lensward.finding.FindingCode.BOOKING_WITHOUT_EYE;
import static org.lensward.finding.FindingCode.MEASUREMENT_EYES_CONFLICT;
import static org.lensward.finding.FindingCode.TARGET_CONTRADICTORY;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Appointment.AppointmentStatus;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.plan.Booking;
import org.lensward.quantity.Dioptres;
import org.lensward.risk.SurgeonGrade;

/** Reads one booking: which eye, when, aimed at what, with which lens, by whom. */
final class BookingReader {

    /** SNOMED CT procedures that put a lens in: phacoemulsification with implantation first. */
    static final List<String> LENS_SURGERY = List.of("415089008", "313999004", "385468004");

    private static final Set<AppointmentStatus> CALLED_OFF =
            EnumSet.of(AppointmentStatus.CANCELLED, AppointmentStatus.NOSHOW, AppointmentStatus.ENTEREDINERROR);

    static final String TARGET_EXTENSION = Systems.extension("target-refraction");

    private final Shelf shelf;
    private final Evidences evidences;
    private final List<Finding> found;
    private final List<Evidence> also = new ArrayList<>();

    BookingReader(Shelf shelf, Evidences evidences, List<Finding> found) {
        this.shelf = shelf;
        this.evidences = evidences;
        this.found = found;
    }

    /** What lent the booking its date. */
    List<Evidence> also() {
        return also;
    }

    /** Whether the request books an operation that we plan, whatever its status. */
    static boolean isLensSurgery(ServiceRequest request) {
        return LENS_SURGERY.stream().anyMatch(code -> Codes.has(request.getCode(), Systems.SNOMED, code));
    }

    Booking read(ServiceRequest request) {
        return new Booking(
                evidences.of(request, ""),
                eye(request),
                operation(request),
                target(request),
                lens(request),
                surgeon(request),
                request.getPerformer().stream().map(Shelf::name).findFirst());
    }

    private Optional<Laterality> eye(ServiceRequest request) {
        Set<Laterality> eyes = new EyeCodes(shelf).eyes(new CodeableConcept(), request.getBodySite());
        Evidence site = evidences.of(request, "bodySite");
        if (eyes.isEmpty()) {
            found.add(Finding.of(BOOKING_WITHOUT_EYE, site));
        } else if (eyes.size() > 1) {
            found.add(Finding.of(BOOKING_FOR_BOTH_EYES, site, EyeCodes.words(eyes)));
        }
        return eyes.size() == 1 ? Optional.of(eyes.iterator().next()) : Optional.empty();
    }

    private Optional<LocalDate> operation(ServiceRequest request) {
        Optional<LocalDate> day = Dates.day(request.getOccurrence()).or(() -> appointed(request));
        if (day.isEmpty()) {
            found.add(Finding.of(BOOKING_WITHOUT_DATE, evidences.of(request, "occurrence")));
        }
        return day;
    }

    /** By the appointments that stand; the latest of several, by which biometry is oldest. */
    private Optional<LocalDate> appointed(ServiceRequest request) {
        return shelf.all(Appointment.class)
                .filter(appointment -> Shelf.refers(appointment.getBasedOn(), request))
                .filter(appointment -> !CALLED_OFF.contains(appointment.getStatus()))
                .flatMap(appointment -> {
                    Optional<LocalDate> day = Dates.day(appointment.getStartElement());
                    // A patient's arrival changes the appointment, not the plan: its version here is its day.
                    day.ifPresent(each -> also.add(new Evidence(Shelf.name(appointment), "start-" + each, "start")));
                    return day.stream();
                })
                .max(Comparator.naturalOrder());
    }

    private Optional<Measured<Dioptres>> target(ServiceRequest request) {
        ScalarReader scalars = new ScalarReader(found);
        List<Measured<Dioptres>> targets = stated(request)
                .flatMap(each -> scalars
                        .read(MeasurementCode.TARGET_REFRACTION, each)
                        .map(value -> new Measured<>(Dioptres.of(value), each.evidence()))
                        .stream())
                .toList();
        for (Measured<Dioptres> other : targets) {
            if (!other.value().equals(targets.get(0).value())) {
                found.add(Finding.of(
                        TARGET_CONTRADICTORY,
                        List.of(targets.get(0).evidence(), other.evidence()),
                        targets.get(0).value().signed(),
                        other.value().signed()));
            }
        }
        return targets.stream().findFirst();
    }

    private Stream<Scalar> stated(ServiceRequest request) {
        Stream<Scalar> onBooking = request.getExtensionsByUrl(TARGET_EXTENSION).stream()
                .map(each -> new Scalar(each.getValue(), evidences.of(request, "extension(target-refraction).value")));
        Stream<Scalar> observed = shelf.all(Observation.class)
                .filter(each -> MeasurementCode.of(each.getCode())
                        .filter(MeasurementCode.TARGET_REFRACTION::equals)
                        .isPresent())
                .filter(each -> Shelf.refers(each.getBasedOn(), request))
                .filter(MeasurementGroups::isFinal)
                .filter(each -> ofTheBookedEye(each, request))
                .map(each -> new Scalar(each.getValue(), evidences.of(each, "value")));
        return Stream.concat(onBooking, observed);
    }

    private boolean ofTheBookedEye(Observation target, ServiceRequest request) {
        EyeCodes codes = new EyeCodes(shelf);
        Set<Laterality> eyes = codes.eyes(target.getCode(), List.of(target.getBodySite()));
        Set<Laterality> booked = codes.eyes(new CodeableConcept(), request.getBodySite());
        if (eyes.isEmpty() || booked.containsAll(eyes)) {
            return true;
        }
        eyes.addAll(booked);
        found.add(Finding.of(
                MEASUREMENT_EYES_CONFLICT,
                List.of(evidences.of(target, "bodySite"), evidences.of(request, "bodySite")),
                MeasurementCode.TARGET_REFRACTION.words(),
                EyeCodes.words(eyes)));
        return false;
    }

    private Optional<Measured<String>> lens(ServiceRequest request) {
        return request.getSupportingInfo().stream()
                .filter(info ->
                        "DeviceDefinition".equals(info.getReferenceElement().getResourceType())
                                || shelf.find(DeviceDefinition.class, info).isPresent())
                .findFirst()
                .map(info -> new Measured<>(Shelf.name(info), evidences.of(request, "supportingInfo")));
    }

    private Optional<Measured<SurgeonGrade>> surgeon(ServiceRequest request) {
        return Codes.in(request.getPerformerType(), Systems.SURGEON_GRADE)
                .flatMap(code -> Stream.of(SurgeonGrade.values())
                        .filter(grade -> grade.code().equals(code))
                        .findFirst()
                        .map(grade -> new Measured<>(grade, evidences.of(request, "performerType"))));
    }
}
