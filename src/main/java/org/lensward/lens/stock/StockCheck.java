package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The stock check before theatre: which carton is for which operation of a day or a week, and what is short.
 *
 * <p>Promised cartons stay where they are promised. Of the free ones, in this order: as many primary lenses as possible are covered, then
 * spares, then sulcus and anterior-chamber lenses, of each the earlier days first; the distance cartons travel is least; the cartons that
 * expire first are used. No carton goes to an operation later than its last day of use, or to a site it cannot reach in time. Each kind of
 * lens is a problem of its own, solved exactly. The order of the input decides nothing.
 */
public final class StockCheck {

    private StockCheck() {}

    /**
     * Who gets what.
     *
     * @param needs of the kits of the days looked at, each once
     * @param units every carton of the bank, in any state, each once
     * @param policy how the bank is kept
     * @param today from when orders and transfers can be sent
     */
    public static Allocation allocate(List<LensNeed> needs, List<LensUnit> units, StockPolicy policy, LocalDate today) {
        requireDistinct(units.stream().map(unit -> unit.evidence().resource()), "carton");
        requireDistinct(needs.stream(), "need");
        Reach reach = new Reach(policy, today);
        List<KindAllocation> kinds = kinds(needs, units, reach);
        List<Assignment> assignments = kinds.stream()
                .flatMap(kind -> kind.assignments().stream())
                .sorted(Comparator.comparing(each -> each.needs().get(0), Allocation.BY_DAY))
                .toList();
        List<LensUnit> left = left(units, assignments);
        return new Allocation(
                assignments,
                shortages(needs, kinds, reach),
                kinds.stream()
                        .flatMap(kind -> kind.orders(reach).stream())
                        .sorted(Order.BY_DUE_DAY)
                        .toList(),
                heldInVain(needs, left),
                new FreeStock(only(left, UnitState.AVAILABLE), reach));
    }

    private static List<KindAllocation> kinds(List<LensNeed> needs, List<LensUnit> units, Reach reach) {
        Map<LensKind, List<LensUnit>> shelves = units.stream()
                .filter(unit -> unit.state() != UnitState.IMPLANTED && unit.state() != UnitState.WASTED)
                .collect(Collectors.groupingBy(LensKind::of));
        Map<LensKind, List<LensNeed>> wanted = needs.stream()
                .filter(need -> !need.day().isBefore(reach.today()))
                .collect(Collectors.groupingBy(LensKind::of, TreeMap::new, Collectors.toList()));
        List<KindAllocation> kinds = new ArrayList<>();
        wanted.forEach(
                (kind, here) -> kinds.add(KindAllocation.of(kind, here, shelves.getOrDefault(kind, List.of()), reach)));
        return kinds;
    }

    private static List<Shortage> shortages(List<LensNeed> needs, List<KindAllocation> kinds, Reach reach) {
        Stream<Shortage> past = needs.stream()
                .filter(need -> need.day().isBefore(reach.today()))
                .map(need -> new Shortage(need, ShortageReason.DAY_PAST));
        return Stream.concat(past, kinds.stream().flatMap(kind -> kind.shortages(reach).stream()))
                .sorted(Comparator.comparing(Shortage::need, Slot.BY_URGENCY.thenComparing(LensKind::of)))
                .toList();
    }

    private static List<LensUnit> left(List<LensUnit> units, List<Assignment> assignments) {
        Set<LensUnit> used = assignments.stream().map(Assignment::unit).collect(Collectors.toSet());
        return units.stream()
                .filter(unit -> !used.contains(unit))
                .sorted(Holds.FIRST_EXPIRED_FIRST)
                .toList();
    }

    private static List<LensUnit> heldInVain(List<LensNeed> needs, List<LensUnit> left) {
        Set<String> bookings = needs.stream().map(LensNeed::booking).collect(Collectors.toSet());
        return only(left, UnitState.RESERVED, UnitState.PICKED).stream()
                .filter(unit -> unit.heldFor().filter(bookings::contains).isPresent())
                .toList();
    }

    private static List<LensUnit> only(List<LensUnit> units, UnitState... states) {
        return units.stream()
                .filter(unit -> Set.of(states).contains(unit.state()))
                .toList();
    }

    private static <T> void requireDistinct(Stream<T> listed, String what) {
        Set<T> seen = new HashSet<>();
        listed.filter(each -> !seen.add(each)).findFirst().ifPresent(twice -> {
            throw new IllegalArgumentException("The same " + what + " is listed twice: " + twice);
        });
    }
}
