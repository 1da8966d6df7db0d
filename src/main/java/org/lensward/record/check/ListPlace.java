package org.lensward.record.check;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Appointment.AppointmentStatus;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.record.Shelf;

/**
 * Where a booking stands on its operating list: how many appointments of that day at the same place start before it, and when. The list is
 * what was gathered; with the booking's own appointment alone only its time and place count.
 */
final class ListPlace {

    private static final Set<AppointmentStatus> CALLED_OFF =
            EnumSet.of(AppointmentStatus.CANCELLED, AppointmentStatus.NOSHOW, AppointmentStatus.ENTEREDINERROR);

    private static final Comparator<Appointment> ORDER =
            Comparator.comparing(Appointment::getStart).thenComparing(each -> Shelf.name(each));

    private ListPlace() {}

    /** In words, such as {@code 2 at 2026-03-16T09:30:00+01:00 in Location/theatre-1}; empty without an appointment. */
    static String of(Shelf shelf, String booking) {
        List<Appointment> standing = shelf.all(Appointment.class)
                .filter(Appointment::hasStart)
                .filter(each -> !CALLED_OFF.contains(each.getStatus()))
                .sorted(ORDER)
                .toList();
        Optional<Appointment> own = standing.stream()
                .filter(each -> each.getBasedOn().stream()
                        .anyMatch(named -> Shelf.name(named).equals(booking)))
                .max(ORDER);
        return own.map(each -> words(each, standing)).orElse("");
    }

    private static String words(Appointment own, List<Appointment> standing) {
        Set<String> places = places(own);
        List<String> list = standing.stream()
                .filter(each -> each == own || places(each).stream().anyMatch(places::contains))
                .filter(each -> day(each).equals(day(own)))
                .map(each -> Shelf.name(each))
                .toList();
        return (list.indexOf(Shelf.name(own)) + 1)
                + " at " + own.getStartElement().getValueAsString()
                + (places.isEmpty() ? "" : " in " + places.stream().sorted().collect(Collectors.joining(", ")));
    }

    private static String day(Appointment appointment) {
        return appointment.getStartElement().getValueAsString().substring(0, "2026-03-16".length());
    }

    private static Set<String> places(Appointment appointment) {
        return appointment.getParticipant().stream()
                .map(Appointment.AppointmentParticipantComponent::getActor)
                .filter(Reference::hasReference)
                .map(Shelf::name)
                .filter(each -> each.startsWith("Location/"))
                .collect(Collectors.toSet());
    }
}
