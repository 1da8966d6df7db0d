package org.lensward.record.hl7;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Appointment.AppointmentStatus;
import org.hl7.fhir.r4.model.Appointment.ParticipationStatus;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestIntent;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.lensward.eye.Laterality;
import org.lensward.finding.FindingCode;
import org.lensward.record.SidedCodes;
import org.lensward.record.Systems;
import org.lensward.record.incoming.Incoming;
import org.lensward.record.incoming.LastingId;
import org.lensward.record.incoming.RefusedInput;
import org.lensward.record.incoming.Site;

/**
 * SIU^S12 (new), S13 (another time), S14 (changed), S15 (called off): the booking of one eye, and its Appointment where the message says
 * how long it lasts. Of an operation that puts no lens in only the withdrawal of an earlier booking is taken.
 */
final class BookingMessage {

    private static final String CALLED_OFF = "SIU^S15";

    /** Units of a duration, as UCUM and as commonly written (common practice, no source). */
    private static final Map<String, Duration> UNITS = Map.of(
            "min", Duration.ofMinutes(1),
            "MIN", Duration.ofMinutes(1),
            "M", Duration.ofMinutes(1),
            "h", Duration.ofHours(1),
            "HR", Duration.ofHours(1),
            "s", Duration.ofSeconds(1));

    private final Message message;
    private final Site site;
    private final Times times;
    private final Fields schedule;
    private final boolean calledOff;

    private BookingMessage(Message message, Site site) {
        this.message = message;
        this.site = site;
        this.times = new Times(site.zone());
        this.schedule = message.only("SCH");
        this.calledOff = message.type().equals(CALLED_OFF);
    }

    static Incoming read(Message message, Site site) {
        return new BookingMessage(message, site).read();
    }

    private Incoming read() {
        Optional<String> operation = operation();
        boolean stands = !calledOff && operation.isPresent();
        List<Resource> resources = new ArrayList<>();
        ServiceRequest booking = booking(operation, stands);
        resources.add(booking);
        appointment(booking, stands).ifPresent(resources::add);
        return new Incoming(PatientNamed.in(message, site), resources, operation.isEmpty());
    }

    private ServiceRequest booking(Optional<String> operation, boolean stands) {
        ServiceRequest booking = new ServiceRequest();
        booking.setId(id());
        entity(1).ifPresent(booking::addIdentifier);
        entity(2).ifPresent(booking::addIdentifier);
        booking.setStatus(stands ? ServiceRequestStatus.ACTIVE : ServiceRequestStatus.REVOKED);
        booking.setIntent(ServiceRequestIntent.ORDER);
        operation.ifPresent(code -> booking.setCode(
                new CodeableConcept(new Coding().setSystem(Systems.SNOMED).setCode(code))));
        booking.setAuthoredOnElement(new DateTimeType(message.sent(times).getValueAsString()));
        if (stands) {
            booking.addBodySite(SidedCodes.concept(
                    eye().orElseThrow(() -> new RefusedInput(FindingCode.MESSAGE_WITHOUT_EYE, "SCH", "the booking"))));
            booking.setOccurrence(
                    start().orElseThrow(() -> new RefusedInput(FindingCode.MESSAGE_FIELD_MISSING, "AIS-4", "AIS-4")));
        }
        return booking;
    }

    /** The filler's number, the placer's where there is none. */
    private String id() {
        String filler = schedule.entity(2);
        String number = filler.isEmpty() ? schedule.entity(1) : filler;
        if (number.isEmpty()) {
            throw new RefusedInput(FindingCode.MESSAGE_FIELD_MISSING, schedule.at(2), schedule.at(2));
        }
        return LastingId.of("hl7", message.sender(), filler.isEmpty() ? "placer" : "filler", number);
    }

    private Optional<Identifier> entity(int field) {
        String value = schedule.text(field);
        Identifier identifier = new Identifier().setValue(value);
        site.system(schedule.text(field, 0, 2)).ifPresent(identifier::setSystem);
        return value.isEmpty() ? Optional.empty() : Optional.of(identifier);
    }

    /** The operation that puts a lens in, by SNOMED CT or by the site's own code; one at most. */
    private Optional<String> operation() {
        List<String> lens = Stream.concat(message.all("PR1"), message.all("AIS"))
                .flatMap(segment -> segment.codes(3).stream())
                .flatMap(coded -> coded.in(Systems.SNOMED).or(() -> site.operation(coded.code())).stream())
                .filter(SidedCodes::isLensSurgery)
                .distinct()
                .toList();
        if (lens.size() > 1) {
            throw new RefusedInput(FindingCode.MESSAGE_UNREADABLE, "AIS-3", "AIS-3", "more than one lens operation");
        }
        return lens.stream().findFirst();
    }

    /** Nearest first: the procedure's own modifier, what the filler added to the service, what the placer added. */
    private Optional<Laterality> eye() {
        List<Set<Laterality>> places = new ArrayList<>();
        for (Place each : List.of(new Place("PR1", 16), new Place("AIS", 12), new Place("AIS", 11))) {
            message.all(each.segment()).forEach(segment -> places.add(Sides.of(segment.codes(each.field()))));
        }
        return Sides.eye("the booking", places);
    }

    private record Place(String segment, int field) {}

    private Optional<DateTimeType> start() {
        return message.all("AIS")
                .flatMap(segment -> times.at(segment, 4, 1).stream())
                .findFirst()
                .or(() -> times.at(schedule, 11, 4));
    }

    /** An Appointment that stands needs its end (FHIR R4, Appointment, app-3); the booking's own day is enough for planning. */
    private Optional<Resource> appointment(ServiceRequest booking, boolean stands) {
        Optional<Date> start =
                start().filter(each -> each.getValueAsString().length() > 10).map(DateTimeType::getValue);
        Optional<Date> end = start.flatMap(this::end);
        if (stands && end.isEmpty()) {
            return Optional.empty();
        }
        Appointment appointment = new Appointment();
        appointment.setId(booking.getIdElement().getIdPart());
        appointment.setStatus(stands ? AppointmentStatus.BOOKED : AppointmentStatus.CANCELLED);
        appointment.addBasedOn(
                new Reference("ServiceRequest/" + booking.getIdElement().getIdPart()));
        appointment.setCreatedElement(new DateTimeType(message.sent(times).getValueAsString()));
        appointment.addParticipant().setStatus(ParticipationStatus.ACCEPTED);
        end.ifPresent(each -> appointment
                .setStartElement(new InstantType(start.orElseThrow()))
                .setEnd(each));
        return Optional.of(appointment);
    }

    private Optional<Date> end(Date start) {
        Optional<Duration> lasts = message.all("AIS")
                .flatMap(segment -> duration(segment.text(7), segment.text(8)).stream())
                .findFirst()
                .or(() -> duration(schedule.text(9), schedule.text(10)));
        return times.at(schedule, 11, 5)
                .filter(end -> end.getValue().after(start))
                .map(DateTimeType::getValue)
                .or(() -> lasts.map(each -> Date.from(start.toInstant().plus(each))));
    }

    private static Optional<Duration> duration(String count, String unit) {
        return count.matches("[1-9]\\d{0,3}")
                ? Optional.ofNullable(UNITS.get(unit)).map(each -> each.multipliedBy(Long.parseLong(count)))
                : Optional.empty();
    }
}
