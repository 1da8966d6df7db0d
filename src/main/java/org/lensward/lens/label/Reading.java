package org.lensward.lens.label;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;

/**
 * One reading of one scan.
 *
 * @param where where the scan stands
 * @param dates how two digits become a year on the day of reading
 */
record Reading(Evidence where, LabelDates dates) {

    /** What the digit keys give, as far as ASCII goes: unshifted on a French keyboard, shifted on an American one. */
    private static final String OTHER_DIGIT_ROWS = "&\"'(-_)!@#$^*`";

    <T> Outcome<T> refuse(FindingCode code, Object... particulars) {
        return Outcome.withheld(Finding.of(code, where, particulars));
    }

    /** The fact of a day, or that it is none. */
    Outcome<List<LabelFact>> onDay(Optional<LocalDate> day, Function<LocalDate, LabelFact> fact, String printed) {
        return day.<Outcome<List<LabelFact>>>map(found -> Outcome.ready(List.of(fact.apply(found))))
                .orElseGet(() -> refuse(FindingCode.LABEL_DATE_IMPOSSIBLE, printed + " is no day"));
    }

    /** A character where none such may stand, by its place, with the likeliest cause; never the text around it. */
    <T> Outcome<T> garbled(String text, int place) {
        char found = text.charAt(place);
        String cause = "";
        if (found > '~' || OTHER_DIGIT_ROWS.indexOf(found) >= 0) {
            cause = "; the scanner's keyboard layout seems to differ from the computer's";
        } else if (Character.isLowerCase(found)) {
            cause = "; caps lock may be on";
        }
        return refuse(FindingCode.LABEL_GARBLED, "character " + (place + 1) + " is " + printed(found) + cause);
    }

    /** As itself where that prints, by its number elsewhere. */
    private static String printed(char found) {
        boolean prints = found >= ' ' && found <= '~' || Character.isLetter(found);
        return prints ? String.valueOf(found) : String.format(Locale.ROOT, "U+%04X", (int) found);
    }
}
