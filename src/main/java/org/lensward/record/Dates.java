package org.lensward.record;

import java.time.LocalDate;
import java.util.Optional;
import org.hl7.fhir.r4.model.BaseDateTimeType;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;

/** The calendar day of a FHIR time, as it was written where it was written. A year or a month alone counts from its first day. */
public final class Dates {

    private Dates() {}

    public static Optional<LocalDate> day(@Nullable Type time) {
        if (time instanceof Period period) {
            return day(period.getStartElement());
        }
        if (time instanceof BaseDateTimeType dateTime && dateTime.hasValue()) {
            String written = dateTime.getValueAsString();
            String day = (written.length() >= 10 ? written.substring(0, 10) : written + "-01-01").substring(0, 10);
            return Optional.of(LocalDate.parse(day));
        }
        return Optional.empty();
    }
}
