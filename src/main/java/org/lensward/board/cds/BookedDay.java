package org.lensward.board.cds;

import org.hl7.fhir.r4.model.BaseDateTimeType;
import org.hl7.fhir.r4.model.ServiceRequest;

/** The day of an operation as it is read out. */
final class BookedDay {

    static final String UNKNOWN = "day not stated";

    private static final int DATE = 10;

    private BookedDay() {}

    /** As the booking itself says; its appointments are not looked at. */
    static String of(ServiceRequest booking) {
        return booking.hasOccurrencePeriod()
                ? of(booking.getOccurrencePeriod().getStartElement())
                : booking.hasOccurrenceDateTimeType() ? of(booking.getOccurrenceDateTimeType()) : UNKNOWN;
    }

    static String of(BaseDateTimeType time) {
        return time.hasValue()
                ? time.getValueAsString()
                        .substring(0, Math.min(DATE, time.getValueAsString().length()))
                : UNKNOWN;
    }
}
