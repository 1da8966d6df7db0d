package org.lensward.lens.label;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Year;
import java.time.YearMonth;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Dates with two digits for the year, read on a given day.
 *
 * <p>The century is GS1's (General Specifications section 7.12; value from memory): the year from 49 before to 50 after the year of
 * reading. HIBC prints no rule that we found; the same one serves (common practice, no source).
 *
 * @param today the day of reading
 */
record LabelDates(LocalDate today) {

    /** GS1's YYMMDD, where day 00 is the last of the month (General Specifications section 3.4). */
    Optional<LocalDate> yearMonthDay0(String text) {
        return text.endsWith("00") ? lastOfMonth(two(text, 0), two(text, 2)) : yearMonthDay(text);
    }

    /** YYMMDD. */
    Optional<LocalDate> yearMonthDay(String text) {
        return date(two(text, 0), two(text, 2), two(text, 4));
    }

    /** MMDDYY. */
    Optional<LocalDate> monthDayYear(String text) {
        return date(two(text, 4), two(text, 0), two(text, 2));
    }

    /** MMYY, good to the last day of the month (ANSI/HIBC 2.6, as a general library restates it). */
    Optional<LocalDate> monthYear(String text) {
        return lastOfMonth(two(text, 2), two(text, 0));
    }

    /** YYJJJ: year and day of the year. */
    Optional<LocalDate> yearDay(String text) {
        return tried(() -> Year.of(fullYear(two(text, 0))).atDay(Integer.parseInt(text.substring(2))));
    }

    /** YYYYMMDD. */
    static Optional<LocalDate> fullDate(String text) {
        int year = 100 * two(text, 0) + two(text, 2);
        return tried(() -> LocalDate.of(year, two(text, 4), two(text, 6)));
    }

    private Optional<LocalDate> date(int year, int month, int day) {
        return tried(() -> LocalDate.of(fullYear(year), month, day));
    }

    private Optional<LocalDate> lastOfMonth(int year, int month) {
        return tried(() -> YearMonth.of(fullYear(year), month).atEndOfMonth());
    }

    private int fullYear(int twoDigits) {
        int century = today.getYear() - today.getYear() % 100;
        int ahead = century + twoDigits - today.getYear();
        if (ahead > 50) {
            return century - 100 + twoDigits;
        }
        return ahead < -49 ? century + 100 + twoDigits : century + twoDigits;
    }

    private static int two(String text, int from) {
        return Integer.parseInt(text.substring(from, from + 2));
    }

    /** The calendar knows best what is no date: its answer becomes an absent one. */
    private static Optional<LocalDate> tried(Supplier<LocalDate> date) {
        try {
            return Optional.of(date.get());
        } catch (DateTimeException noSuchDay) {
            return Optional.empty();
        }
    }
}
