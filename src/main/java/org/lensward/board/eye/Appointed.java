package org.lensward.board.eye;

import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.record.Shelf;

/**
 * When and where an eye is operated on, as the appointment has it, else the booking.
 *
 * @param when date and time
 * @param theatre where
 */
record Appointed(String when, String theatre) {

    static Appointed of(Shelf shelf, ServiceRequest booking) {
        return shelf.all(Appointment.class)
                .filter(each -> Shelf.refers(each.getBasedOn(), booking))
                .filter(Appointment::hasStart)
                .map(each -> new Appointed(
                        each.getStartElement()
                                .getValueAsString()
                                .replace('T', ' ')
                                .substring(0, 16),
                        each.hasDescription() ? each.getDescription() : "theatre not stated"))
                .findFirst()
                .orElseGet(() -> new Appointed(
                        booking.hasOccurrenceDateTimeType()
                                ? booking.getOccurrenceDateTimeType().getValueAsString()
                                : "no date",
                        "theatre not stated"));
    }
}
