package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.lensward.lens.stock.LexicographicFlow.Arc;
import org.lensward.lens.stock.Slot.Place;

/**
 * The cartons of one kind on their way to their slots. Cartons of one site and expiry are alike, and so are slots of one place, so the
 * network grows with sites, days and expiry dates, not with cartons times operations:
 *
 * <pre>
 * source -> lot (site, expiry) -> in date (site, last day it is in date) -> in date (site, a day earlier) ...
 * in date (site, day) -> place (role, day, size, site)      source -> place: what stays short
 * </pre>
 *
 * Three costs, in this order: what stays short by its weight, the distance, the rank of the expiry. That whole numbers which only fall
 * from one place in the order to the next serve the first role, then the earlier day, as fully as any weights would, is the greedy
 * property of matroids (Edmonds, Mathematical Programming 1971;1:127): what can be served at once is a transversal matroid.
 */
final class StockNetwork {

    /** Where the flow passes. */
    sealed interface Node {}

    private record Source() implements Node {}

    private record Lot(String site, LocalDate expiry) implements Node {}

    private record InDate(String site, LocalDate day) implements Node {}

    private record Wanted(Place place) implements Node {}

    private static final Source SOURCE = new Source();

    private final Reach reach;
    private final TreeMap<Place, List<Slot>> slots;
    private final TreeMap<String, TreeMap<LocalDate, List<LensUnit>>> lots;
    private final NavigableSet<LocalDate> days;
    private final int count;
    private final List<Arc<Node>> arcs = new ArrayList<>();

    /**
     * The network of one kind.
     *
     * @param slots at least one
     * @param free cartons nobody is promised
     * @param reach what can be where by when
     */
    StockNetwork(List<Slot> slots, List<LensUnit> free, Reach reach) {
        this.reach = reach;
        this.slots = slots.stream().collect(Collectors.groupingBy(Slot::place, TreeMap::new, Collectors.toList()));
        this.days = slots.stream().map(Slot::day).collect(Collectors.toCollection(TreeSet::new));
        this.count = slots.size();
        this.lots = free.stream()
                .sorted(Holds.FIRST_EXPIRED_FIRST)
                .collect(Collectors.groupingBy(
                        LensUnit::location,
                        TreeMap::new,
                        Collectors.collectingAndThen(Collectors.toList(), this::lotsWorthUsing)));
        shortArcs();
        lotArcs();
        lots.keySet().forEach(this::siteArcs);
    }

    /** Which carton goes where. What is not here stays short. */
    List<Assignment> allocate() {
        Map<Arc<Node>, Integer> flow = LexicographicFlow.least(supplies(), arcs);
        Map<String, List<LensUnit>> taken = taken(flow);
        List<Assignment> assignments = new ArrayList<>();
        served(flow).forEach((site, here) -> {
            // Earliest day, earliest expiry: if any pairing is in date, this one is.
            here.sort(Comparator.comparing(Slot::day).thenComparing(Slot::place));
            List<LensUnit> sent = Objects.requireNonNull(taken.get(site));
            for (int index = 0; index < here.size(); index++) {
                assignments.add(reach.assign(sent.get(index), here.get(index)));
            }
        });
        return assignments;
    }

    /** Cartons by site, the first to expire first: arcs stand in that order. */
    private Map<String, List<LensUnit>> taken(Map<Arc<Node>, Integer> flow) {
        Map<String, List<LensUnit>> taken = new TreeMap<>();
        flow.forEach((arc, passing) -> {
            if (arc.to() instanceof Lot lot) {
                List<LensUnit> alike =
                        Objects.requireNonNull(lots.get(lot.site())).get(lot.expiry());
                taken.computeIfAbsent(lot.site(), any -> new ArrayList<>())
                        .addAll(Objects.requireNonNull(alike).subList(0, passing));
            }
        });
        return taken;
    }

    /** Slots by the site that serves them. */
    private Map<String, List<Slot>> served(Map<Arc<Node>, Integer> flow) {
        Map<Place, Integer> next = new TreeMap<>();
        Map<String, List<Slot>> served = new TreeMap<>();
        flow.forEach((arc, passing) -> {
            if (arc.from() instanceof InDate site && arc.to() instanceof Wanted wanted && passing > 0) {
                int first = next.merge(wanted.place(), passing, Integer::sum) - passing;
                List<Slot> alike = Objects.requireNonNull(slots.get(wanted.place()));
                served.computeIfAbsent(site.site(), any -> new ArrayList<>())
                        .addAll(alike.subList(first, first + passing));
            }
        });
        return served;
    }

    /**
     * Of one site, by expiry. Of the cartons in date on a day no more are worth using than there are slots, the first to expire: were a
     * later one used, one of those would be free, as near and expiring sooner.
     */
    private TreeMap<LocalDate, List<LensUnit>> lotsWorthUsing(List<LensUnit> firstExpiredFirst) {
        Set<LensUnit> worth = new LinkedHashSet<>();
        days.forEach(day -> firstExpiredFirst.stream()
                .filter(unit -> unit.isInDateOn(day))
                .limit(count)
                .forEach(worth::add));
        return worth.stream()
                .collect(Collectors.groupingBy(unit -> unit.identity().expiry(), TreeMap::new, Collectors.toList()));
    }

    private void shortArcs() {
        TreeMap<Place, Integer> weights = new TreeMap<>(Place.BY_WEIGHT);
        slots.descendingKeySet().forEach(place -> weights.putIfAbsent(place, weights.size() + 1));
        slots.forEach((place, alike) ->
                add(SOURCE, new Wanted(place), alike.size(), Objects.requireNonNull(weights.get(place)), 0, 0));
    }

    private void lotArcs() {
        List<LocalDate> expiries = lots.values().stream()
                .flatMap(dates -> dates.keySet().stream())
                .distinct()
                .sorted()
                .toList();
        Map<LocalDate, Integer> ranks = new LinkedHashMap<>();
        expiries.forEach(expiry -> ranks.put(expiry, ranks.size() + 1));
        lots.forEach((site, dates) -> dates.forEach((expiry, alike) -> {
            Lot lot = new Lot(site, expiry);
            int capacity = Math.min(alike.size(), count);
            add(SOURCE, lot, capacity, 0, 0, Objects.requireNonNull(ranks.get(expiry)));
            add(lot, new InDate(site, Objects.requireNonNull(days.floor(expiry))), capacity, 0, 0, 0);
        }));
    }

    private void siteArcs(String site) {
        for (LocalDate day : days) {
            LocalDate earlier = days.lower(day);
            if (earlier != null) {
                add(new InDate(site, day), new InDate(site, earlier), count, 0, 0, 0);
            }
        }
        slots.keySet().stream()
                .filter(place -> reach.arrives(site, place.location(), place.day()))
                .forEach(place -> add(
                        new InDate(site, place.day()),
                        new Wanted(place),
                        count,
                        0,
                        reach.hectometres(site, place.location()),
                        0));
    }

    private void add(Node from, Node to, int capacity, int weight, int distance, int expiry) {
        arcs.add(new Arc<>(from, to, capacity, List.of(weight, distance, expiry)));
    }

    private Map<Node, Integer> supplies() {
        Map<Node, Integer> supplies = new LinkedHashMap<>();
        supplies.put(SOURCE, count);
        slots.forEach((place, alike) -> supplies.put(new Wanted(place), -alike.size()));
        arcs.forEach(arc -> {
            supplies.putIfAbsent(arc.from(), 0);
            supplies.putIfAbsent(arc.to(), 0);
        });
        return supplies;
    }
}
