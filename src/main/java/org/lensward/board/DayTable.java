package org.lensward.board;

import java.util.List;
import java.util.stream.Collectors;
import org.lensward.plan.order.SuggestedTurn;
import org.lensward.risk.Bring;

/** A theatre's day for a terminal. Names nobody: bookings and their numbers only. */
public final class DayTable {

    private DayTable() {}

    /** Every sheet, one after the other. */
    public static String of(List<DaySheet> sheets) {
        return sheets.stream().map(DayTable::of).collect(Collectors.joining(System.lineSeparator()));
    }

    private static String of(DaySheet sheet) {
        StringBuilder text = new StringBuilder();
        line(text, sheet.theatre() + ", " + sheet.day());
        line(text, "  Suggested order (a person orders the list):");
        int turn = 1;
        for (SuggestedTurn each : sheet.turns()) {
            String why = each.reasons().isEmpty() ? "" : ": " + String.join("; ", each.reasons());
            line(text, "    " + turn++ + ". " + each.eye().booking().replace("ServiceRequest/", "") + why);
        }
        line(text, "  To bring:");
        for (Bring each : sheet.bring().things()) {
            String which = each.particulars().isEmpty() ? "" : ": " + each.particulars();
            line(text, "    " + each.count() + " x " + each.item() + which);
        }
        line(text, "  Lenses:");
        sheet.lenses().forEach((lens, count) -> line(text, "    " + count + " x " + lens));
        return text.toString();
    }

    private static void line(StringBuilder text, String words) {
        text.append(words).append(System.lineSeparator());
    }
}
