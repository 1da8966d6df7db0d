package org.lensward.lens.label;

import static org.lensward.finding.FindingCode.LABEL_DATE_IMPOSSIBLE;
import static org.lensward.finding.FindingCode.LABEL_PART_UNKNOWN;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lensward.finding.Outcome;

/**
 * The parts that may follow the device in a HIBC label: secondary data (ANSI/HIBC 2.6 table F1) and supplemental data (section 2.3.2), as
 * restated by general barcode libraries. Lot and serial are of 1 to 18 characters; the hour of an expiry is checked and left aside.
 */
final class HibcSecondary {

    private static final String TEXT = "([A-Z0-9 .-]{0,18})";
    private static final String SOME_TEXT = "([A-Z0-9 .-]{1,18})";

    private static final Pattern LOT = Pattern.compile("\\$" + SOME_TEXT);
    private static final Pattern SERIAL = Pattern.compile("\\$\\+" + SOME_TEXT);

    /** Quantity of two or five digits, then the date in the format its first digit says, then lot or serial. */
    private static final Pattern DATED_LOT = Pattern.compile(
            "\\$\\$(?:8(\\d{2})|9(\\d{5}))?(?:([01]\\d{3}|2\\d{6}|3\\d{6}|4\\d{8}|5\\d{5}|6\\d{7}|7)" + TEXT + ")?");

    private static final Pattern DATED_SERIAL =
            Pattern.compile("\\$\\$\\+([01]\\d{3}|2\\d{6}|3\\d{6}|4\\d{8}|5\\d{5}|6\\d{7}|7)" + TEXT);
    private static final Pattern OLDER = Pattern.compile("(\\d{5})" + TEXT);
    private static final Pattern SUPPLEMENT = Pattern.compile("(S)" + SOME_TEXT + "|(14D|16D)(\\d{8})|(Q)(\\d{1,5})");

    private final Reading reading;

    HibcSecondary(Reading reading) {
        this.reading = reading;
    }

    /** What one part says. */
    Outcome<List<LabelFact>> facts(String part) {
        Matcher dated = DATED_LOT.matcher(part);
        if (dated.matches() && part.length() > 2) {
            return datedLot(dated);
        }
        Matcher serial = SERIAL.matcher(part);
        Matcher datedSerial = DATED_SERIAL.matcher(part);
        Matcher lot = LOT.matcher(part);
        Matcher older = OLDER.matcher(part);
        if (lot.matches()) {
            return Outcome.ready(lot(lot.group(1)));
        }
        if (serial.matches()) {
            return Outcome.ready(serial(serial.group(1)));
        }
        if (datedSerial.matches()) {
            return with(expiry(datedSerial.group(1)), serial(datedSerial.group(2)));
        }
        if (older.matches()) {
            return with(expiry("5" + older.group(1)), lot(older.group(2)));
        }
        return supplement(part);
    }

    private Outcome<List<LabelFact>> datedLot(Matcher dated) {
        List<LabelFact> facts = new ArrayList<>();
        Optional.ofNullable(dated.group(1))
                .or(() -> Optional.ofNullable(dated.group(2)))
                .ifPresent(pieces -> facts.add(new LabelFact.Quantity(Integer.parseInt(pieces))));
        Optional<String> date = Optional.ofNullable(dated.group(3));
        date.ifPresent(some -> facts.addAll(lot(dated.group(4))));
        return date.map(some -> with(expiry(some), facts)).orElseGet(() -> Outcome.ready(facts));
    }

    private Outcome<List<LabelFact>> supplement(String part) {
        Matcher matcher = SUPPLEMENT.matcher(part);
        if (!matcher.matches()) {
            return reading.refuse(LABEL_PART_UNKNOWN, part.isEmpty() ? "an empty part" : part);
        }
        if (part.startsWith("S")) {
            return Outcome.ready(serial(part.substring(1)));
        }
        if (part.startsWith("Q")) {
            return Outcome.ready(List.of(new LabelFact.Quantity(Integer.parseInt(part.substring(1)))));
        }
        Optional<LocalDate> day = LabelDates.fullDate(part.substring(3));
        return part.startsWith("14D")
                ? reading.onDay(day, LabelFact.Expiry::new, part)
                : reading.onDay(day, LabelFact.Production::new, part);
    }

    /** The date whose format its first digit says; 7 says that there is none. */
    private Outcome<List<LabelFact>> expiry(String printed) {
        LabelDates dates = reading.dates();
        String digits = printed.substring(1);
        return switch (printed.charAt(0)) {
            case '2' -> day(dates.monthDayYear(digits), printed);
            case '3' -> day(dates.yearMonthDay(digits), printed);
            case '4' -> hour(digits, 6).then(dayAlone -> day(dates.yearMonthDay(dayAlone), printed));
            case '5' -> day(dates.yearDay(digits), printed);
            case '6' -> hour(digits, 5).then(dayAlone -> day(dates.yearDay(dayAlone), printed));
            case '7' -> Outcome.ready(List.of());
            default -> day(dates.monthYear(printed), printed);
        };
    }

    private Outcome<List<LabelFact>> day(Optional<LocalDate> day, String printed) {
        return reading.onDay(day, LabelFact.Expiry::new, printed);
    }

    /** The digits of the day, if those of the hour after them are below 24. */
    private Outcome<String> hour(String digits, int length) {
        return Integer.parseInt(digits.substring(length)) < 24
                ? Outcome.ready(digits.substring(0, length))
                : reading.refuse(LABEL_DATE_IMPOSSIBLE, digits + " ends in no hour");
    }

    private static Outcome<List<LabelFact>> with(Outcome<List<LabelFact>> first, List<LabelFact> others) {
        return Gathered.of(List.of(first, Outcome.ready(others)));
    }

    private static List<LabelFact> lot(String text) {
        return text.isEmpty() ? List.of() : List.of(new LabelFact.Lot(text));
    }

    private static List<LabelFact> serial(String text) {
        return text.isEmpty() ? List.of() : List.of(new LabelFact.Serial(text));
    }
}
