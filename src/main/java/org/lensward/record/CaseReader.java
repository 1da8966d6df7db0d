package org.lensward.record;

import ca.uhn.fhir.context.FhirContext;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.BodyStructure;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.lensward.eye.Biometry;
import org.lensward.eye.BiometryChoice;
import org.lensward.eye.BiometryPolicy;
import org.lensward.eye.Eye;
import org.lensward.eye.Laterality;
import org.lensward.eye.Person;
import org.lensward.eye.Sex;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.lens.Catalogue;
import org.lensward.plan.Booking;
import org.lensward.plan.PlanningCase;

/** Reads bookings and all that concerns them into the core's words. */
public final class CaseReader {

    private final Evidences evidences;
    private final BiometryChoice choice;

    public CaseReader(FhirContext fhir, BiometryPolicy policy) {
        this.evidences = new Evidences(fhir);
        this.choice = new BiometryChoice(policy);
    }

    /**
     * Every active booking of lens surgery on the shelf.
     *
     * @param shelf what was gathered from the record
     * @param today the day of reading
     * @throws UnreadableRecord where a booking's patient is not there
     */
    public List<BookedCase> readAll(Shelf shelf, LocalDate today) {
        return readAll(shelf, today, List.of());
    }

    /**
     * Every active booking of lens surgery on the shelf.
     *
     * @param shelf what was gathered from the record
     * @param today the day of reading
     * @param doubts what was doubtful before reading
     * @throws UnreadableRecord where a booking's patient is not there
     */
    public List<BookedCase> readAll(Shelf shelf, LocalDate today, List<Doubt> doubts) {
        return shelf.all(ServiceRequest.class)
                .filter(BookingReader::isLensSurgery)
                .filter(request -> request.getStatus() == ServiceRequestStatus.ACTIVE)
                .map(request -> read(shelf, request, today, doubts))
                .toList();
    }

    private BookedCase read(Shelf shelf, ServiceRequest request, LocalDate today, List<Doubt> doubts) {
        Patient patient = shelf.find(Patient.class, request.getSubject())
                .orElseThrow(() -> new UnreadableRecord(
                        IssueType.NOTFOUND,
                        Shelf.name(request) + ".subject",
                        "The booking's patient (" + Shelf.name(request.getSubject())
                                + ") is not in what was read; correct the booking or send the patient with it."));
        List<Finding> found = new ArrayList<>();
        BookingReader bookings = new BookingReader(shelf, evidences, found);
        Booking booking = bookings.read(request);
        found.addAll(Doubt.findings(doubts, new Doubt.BookedEye(request, patient, booking.eye()), shelf, evidences));
        Person person = person(shelf, patient, found);
        CatalogueReader catalogues = new CatalogueReader(evidences);
        Catalogue catalogue = catalogues.read(shelf);
        found.addAll(catalogues.found());
        MeasurementGroups grouping = new MeasurementGroups(shelf, evidences);
        List<MeasurementGroup> groups = grouping.of(patient);
        found.addAll(grouping.found());
        EyeReader eyes = new EyeReader(shelf, patient, groups, today);
        Optional<Eye> eye = booking.eye().map(side -> eyes.read(side, booking.evidence(), found));
        // What is doubtful about the fellow eye does not touch this plan; only what is certain is compared with.
        Optional<Eye> fellow =
                booking.eye().map(side -> eyes.read(side.fellow(), booking.evidence(), new ArrayList<>()));
        List<Evidence> also = Stream.of(bookings.also(), grouping.also(), eyes.also, structures(shelf, patient))
                .flatMap(List::stream)
                .toList();
        return new BookedCase(request, patient, new PlanningCase(booking, person, eye, fellow, catalogue, also, found));
    }

    private List<Evidence> structures(Shelf shelf, Patient patient) {
        return shelf.all(BodyStructure.class)
                .filter(structure -> Shelf.refers(List.of(structure.getPatient()), patient))
                .map(structure -> evidences.of(structure, ""))
                .toList();
    }

    /** Reads one eye of one patient; what was doubtful goes into the list given. */
    private final class EyeReader {
        private final Shelf shelf;
        private final Patient patient;
        private final List<MeasurementGroup> groups;
        private final LocalDate today;
        private final List<Evidence> also = new ArrayList<>();

        EyeReader(Shelf shelf, Patient patient, List<MeasurementGroup> groups, LocalDate today) {
            this.shelf = shelf;
            this.patient = patient;
            this.groups = groups;
            this.today = today;
        }

        Eye read(Laterality side, Evidence asked, List<Finding> found) {
            EyeMeasurements measurements = MeasurementReader.read(groups, side, today);
            EyeHistory history = HistoryReader.read(shelf, evidences, patient, side);
            also.addAll(measurements.also());
            found.addAll(measurements.found());
            found.addAll(history.found());
            Outcome<Biometry> biometry = choice.choose(side, measurements.readings(), asked);
            found.addAll(biometry.findings());
            return new Eye(
                    side,
                    biometry.value(),
                    history.history(),
                    history.surgery(),
                    measurements.pupil(),
                    measurements.surprise(),
                    OtherReadingsReader.read(groups, side, today, found),
                    ExaminationReader.read(groups, side, today, found));
        }
    }

    private Person person(Shelf shelf, Patient patient, List<Finding> found) {
        Evidence evidence = Evidences.ofIdentity(patient, identity(patient));
        Optional<LocalDate> birthDate = Dates.day(patient.getBirthDateElement());
        if (birthDate.isEmpty()) {
            found.add(Finding.of(FindingCode.BIRTH_DATE_MISSING, evidence.at("birthDate")));
        }
        Sex sex = patient.getGender() == AdministrativeGender.FEMALE
                ? Sex.FEMALE
                : patient.getGender() == AdministrativeGender.MALE ? Sex.MALE : Sex.UNKNOWN;
        return new Person(
                evidence,
                birthDate,
                sex,
                AllergyReader.read(shelf, evidences, patient),
                AllergyReader.denial(shelf, evidences, patient));
    }

    private static String identity(Patient patient) {
        StringBuilder text = new StringBuilder();
        for (Identifier identifier : patient.getIdentifier()) {
            text.append(identifier.getSystem())
                    .append('|')
                    .append(identifier.getValue())
                    .append('\n');
        }
        for (HumanName name : patient.getName()) {
            text.append(name.getNameAsSingleString()).append('\n');
        }
        text.append(patient.getBirthDateElement().getValueAsString())
                .append('\n')
                .append(patient.getGender());
        return text.toString();
    }
}
