package org.lensward.board.day;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * One day as it is shown.
 *
 * @param day which
 * @param snapshot what was read last
 * @param filter which eyes are wanted
 * @param zone the hospital's, for the time of reading
 */
public record DaySheetShown(LocalDate day, DaySnapshot snapshot, DayFilter filter, ZoneId zone) {

    /** The states in the order of their weight for the day. */
    private static final List<String> STATES = List.of("ready", "provisional", "withheld", "planning", "done");

    private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.UK);
    private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("EEE d MMM", Locale.UK);
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.UK);

    /** One theatre's wanted eyes. */
    public Map<String, List<EyeLine>> theatres() {
        return snapshot.on(day).stream()
                .filter(filter::wants)
                .collect(Collectors.groupingBy(EyeLine::theatre, LinkedHashMap::new, Collectors.toList()));
    }

    /** How many eyes are in each state, whatever is filtered. */
    public Map<String, Long> counts() {
        Map<String, Long> counts = new LinkedHashMap<>();
        STATES.forEach(state -> counts.put(
                state,
                snapshot.on(day).stream()
                        .filter(line -> line.state().equals(state))
                        .count()));
        return counts;
    }

    public int eyes() {
        return snapshot.on(day).size();
    }

    /** Eyes that have a plan, even a withheld one. */
    public long planned() {
        return eyes() - counts().getOrDefault("planning", 0L);
    }

    /** Every theatre of the day, to choose from. */
    public List<String> everyTheatre() {
        return every(EyeLine::theatre);
    }

    /** Every surgeon of the day, to choose from. */
    public List<String> everySurgeon() {
        return every(EyeLine::surgeon);
    }

    private List<String> every(Function<EyeLine, String> property) {
        return snapshot.on(day).stream().map(property).distinct().sorted().toList();
    }

    /** The day in words. */
    public String title() {
        return day.format(LONG);
    }

    /** When the lists were read. */
    public String asOf() {
        return snapshot.isEmpty()
                ? "not read yet"
                : snapshot.asOf().atZone(zone).format(CLOCK);
    }

    public String version() {
        return snapshot.version(day);
    }

    /** The list day before, if there is one. */
    public Optional<Neighbour> before() {
        return Optional.ofNullable(snapshot.days().lowerKey(day)).map(Neighbour::new);
    }

    /** The list day after, if there is one. */
    public Optional<Neighbour> after() {
        return Optional.ofNullable(snapshot.days().higherKey(day)).map(Neighbour::new);
    }

    /** The address of the list alone, for its own looking for news. */
    public String address() {
        return filter.on("/day/" + day + "/list");
    }

    /** How the cartons of an eye stand. */
    public StockWord stock(EyeLine line) {
        return snapshot.stock(line);
    }

    /** The states that somebody is in, to choose from. */
    public List<String> everyState() {
        return new ArrayList<>(counts().entrySet().stream()
                .filter(each -> each.getValue() > 0)
                .map(Map.Entry::getKey)
                .toList());
    }

    /**
     * Another day with a list.
     *
     * @param day which
     */
    public record Neighbour(LocalDate day) {

        public String words() {
            return day.format(SHORT);
        }
    }
}
