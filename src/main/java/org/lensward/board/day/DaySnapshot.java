package org.lensward.board.day;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Every list as the record held it at one moment.
 *
 * @param asOf when it was read
 * @param days the lines of each day that has any, in the order of the list
 * @param stock how the cartons of each booking stand; empty until the bank was read
 */
public record DaySnapshot(Instant asOf, NavigableMap<LocalDate, List<EyeLine>> days, Map<String, StockWord> stock) {

    /** Before anything was read. */
    static final DaySnapshot NOTHING = new DaySnapshot(Instant.EPOCH, new TreeMap<>(), Map.of());

    /** What was read, the lines in the order of the lists. */
    public static DaySnapshot of(Instant asOf, List<EyeLine> lines, Map<String, StockWord> stock) {
        return new DaySnapshot(
                asOf,
                lines.stream().collect(Collectors.groupingBy(EyeLine::day, TreeMap::new, Collectors.toList())),
                stock);
    }

    DaySnapshot with(Map<String, StockWord> read) {
        return new DaySnapshot(asOf, days, read);
    }

    /** Whether nothing was read yet. */
    public boolean isEmpty() {
        return asOf.equals(Instant.EPOCH);
    }

    /** One day's lines. */
    public List<EyeLine> on(LocalDate day) {
        return days.getOrDefault(day, List.of());
    }

    /** That day if it has a list, else the next that has, else the last one. */
    public LocalDate nearest(LocalDate day) {
        return Optional.ofNullable(days.ceilingKey(day))
                .or(() -> Optional.ofNullable(days.floorKey(day)))
                .orElse(day);
    }

    /** How the cartons of a booking stand. */
    public StockWord stock(EyeLine line) {
        if (line.lens().isEmpty()) {
            return new StockWord("none", "no lens planned");
        }
        return stock.getOrDefault(line.booking(), new StockWord("none", "not looked for yet"));
    }

    /** Another word for another content of that day, whenever it was read. */
    public String version(LocalDate day) {
        return Integer.toHexString(on(day).stream()
                .map(line -> List.of(line, stock(line)))
                .toList()
                .hashCode());
    }
}
