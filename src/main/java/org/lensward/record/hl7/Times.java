package org.lensward.record.hl7;

import ca.uhn.fhir.model.api.TemporalPrecisionEnum;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.Date;
import java.util.Optional;
import java.util.TimeZone;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.InstantType;
import org.lensward.finding.FindingCode;
import org.lensward.record.incoming.RefusedInput;

/**
 * HL7 times (TS, DTM): {@code YYYY[MM[DD[HH[MM[SS[.S]]]]]][+/-ZZZZ]}, HL7 2.5 section 2.A.22. A time without a zone is the site's.
 *
 * @param zone the site's
 */
record Times(ZoneId zone) {

    private static final Pattern DTM = Pattern.compile(
            "(\\d{4})(?:(\\d{2})(?:(\\d{2})(?:(\\d{2})(?:(\\d{2})(?:(\\d{2})(\\.\\d{1,4})?)?)?)?)?)?([+-]\\d{4})?");

    /** A time that must be there to the minute. */
    InstantType instant(Fields fields, int field) {
        fields.required(field);
        DateTimeType time = at(fields, field, 1).orElseThrow();
        if (time.getPrecision().ordinal() < TemporalPrecisionEnum.MINUTE.ordinal()) {
            throw unreadable(fields.at(field), "a time of day is wanted");
        }
        return new InstantType(time.getValue(), TemporalPrecisionEnum.MILLI, TimeZone.getTimeZone(ZoneOffset.UTC));
    }

    /** A time as precise as it was written. */
    Optional<DateTimeType> at(Fields fields, int field, int component) {
        String text = fields.text(field, 0, component);
        return text.isEmpty() ? Optional.empty() : Optional.of(read(text, fields.at(field)));
    }

    /** A day. */
    Optional<LocalDate> day(Fields fields, int field) {
        return at(fields, field, 1)
                .map(time -> time.getValueAsString())
                .filter(text -> text.length() >= 10)
                .map(text -> LocalDate.parse(text.substring(0, 10)));
    }

    private DateTimeType read(String text, String place) {
        Matcher parts = DTM.matcher(text);
        if (!parts.matches()) {
            throw unreadable(place, "it is no HL7 time");
        }
        try {
            return parts.group(4) == null ? date(parts) : moment(parts);
        } catch (DateTimeException impossible) {
            throw unreadable(place, "there is no such day or time");
        }
    }

    private static DateTimeType date(Matcher parts) {
        if (parts.group(3) != null) {
            return new DateTimeType(LocalDate.of(number(parts, 1), number(parts, 2), number(parts, 3))
                    .toString());
        }
        return new DateTimeType(
                parts.group(2) == null
                        ? parts.group(1)
                        : LocalDate.of(number(parts, 1), number(parts, 2), 1)
                                .toString()
                                .substring(0, 7));
    }

    private DateTimeType moment(Matcher parts) {
        LocalDateTime local = LocalDateTime.of(
                number(parts, 1),
                number(parts, 2),
                number(parts, 3),
                number(parts, 4),
                number(parts, 5),
                number(parts, 6));
        ZoneId zoned = parts.group(8) == null ? zone : ZoneOffset.of(parts.group(8));
        ZonedDateTime moment = ZonedDateTime.of(local, zoned);
        return new DateTimeType(
                Date.from(moment.toInstant()), TemporalPrecisionEnum.SECOND, TimeZone.getTimeZone(moment.getOffset()));
    }

    private static int number(Matcher parts, int group) {
        return parts.group(group) == null ? 0 : Integer.parseInt(parts.group(group));
    }

    private static RefusedInput unreadable(String place, String why) {
        return new RefusedInput(FindingCode.MESSAGE_UNREADABLE, place, place, why);
    }
}
