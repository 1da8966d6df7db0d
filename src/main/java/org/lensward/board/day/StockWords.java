package org.lensward.board.day;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.lensward.lens.KitRole;
import org.lensward.lens.stock.Allocation;
import org.lensward.lens.stock.LensNeed;
import org.lensward.record.stock.StockSheet;

/** Says of each booking whether its cartons are there. */
final class StockWords {

    private StockWords() {}

    static Map<String, StockWord> of(StockSheet sheet) {
        Map<String, StockWord> words = new HashMap<>();
        sheet.needs().stream()
                .collect(Collectors.groupingBy(LensNeed::booking))
                .forEach((booking, needs) ->
                        words.put(booking.replace("ServiceRequest/", ""), word(sheet.allocation(), booking, needs)));
        return words;
    }

    private static StockWord word(Allocation allocation, String booking, List<LensNeed> needs) {
        List<KitRole> missing = needs.stream()
                .filter(need -> allocation.unitFor(need).isEmpty())
                .map(LensNeed::role)
                .sorted()
                .toList();
        if (!missing.isEmpty()) {
            return new StockWord(
                    "short", "short: " + missing.stream().map(StockWords::words).collect(Collectors.joining(", ")));
        }
        boolean fetched = allocation.assignments().stream()
                .filter(each -> each.transfer().isPresent())
                .flatMap(each -> each.needs().stream())
                .anyMatch(need -> need.booking().equals(booking));
        return fetched
                ? new StockWord("fetch", "all found; some to be fetched")
                : new StockWord("covered", needs.size() == 1 ? "found" : "all " + needs.size() + " found");
    }

    private static String words(KitRole role) {
        return role.code().replace('-', ' ');
    }
}
