package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
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
    public static Allocation allocate(
            List<LensNeed> needs, List<LensUnit> units, StockPolicy policy, LocalDate today) {
        requireDistinct(units.stream().map(unit -> unit.evidence().resource()), "carton");
        requireDistinct(needs.stream(), "need");
        Reach reach = new Reach(policy, today);
        Map<LensKind, List<LensUnit>> shelves = units.stream()
                .filter(unit -> unit.state() != UnitState.IMPLANTED && unit.state() != UnitState.WASTED)
                .collect(Collectors.groupingBy(LensKind::of));
        Map<LensKind, List<LensNeed>> wanted = needs.stream()
                .filter(need -> !need.day().isBefore(today))
                .collect(Collectors.groupingBy(LensKind::of, TreeMap::new, Collectors.toList()));
        List<Assignment> assigned = new ArrayList<>();
        List<Shortage> shortages = new ArrayList<>();
        List<Order> orders = new ArrayList<>();
        wanted.forEach((kind, here) -> {
            List<LensUnit> shelf = shelves.getOrDefault(kind, List.of());
            KindAllocation settled = KindAllocation.of(here, shelf, reach);
            assigned.addAll(settled.assignments());
            settled.unmet().forEach(slot -> slot.needs()
                    .forEach(need -> shortages.add(new Shortage(need, reason(need, shelf, reach)))));
            orders.addAll(orders(kind, settled.unmet(), reach));
        });
        needs.stream()
                .filter(need -> need.day().isBefore(today))
                .forEach(need -> shortages.add(new Shortage(need, ShortageReason.DAY_PAST)));
        return allocation(needs, units, reach, new Settled(assigned, shortages, orders));
    }

    private record Settled(List<Assignment> assigned, List<Shortage> shortages, List<Order> orders) {}

    private static Allocation allocation(List<LensNeed> needs, List<LensUnit> units, Reach reach, Settled settled) {
        settled.assigned().sort(Comparator.comparing(assignment -> assignment.needs().get(0), Allocation.BY_DAY));
        settled.shortages().sort(Comparator.comparing(Shortage::need, Slot.BY_URGENCY));
        settled.orders().sort(Comparator.comparing(Order::orderBy)
                .thenComparing(Order::kind)
                .thenComparing(Order::location));
        Set<LensUnit> used = settled.assigned().stream().map(Assignment::unit).collect(Collectors.toSet());
        Set<String> bookings = needs.stream().map(LensNeed::booking).collect(Collectors.toSet());
        List<LensUnit> left = units.stream()
                .filter(unit -> !used.contains(unit))
                .sorted(Holds.FIRST_EXPIRED_FIRST)
                .toList();
        return new Allocation(
                settled.assigned(),
                settled.shortages(),
                settled.orders(),
                left.stream().filter(unit -> heldFor(unit, bookings)).toList(),
                new FreeStock(
                        left.stream().filter(unit -> unit.state() == UnitState.AVAILABLE).toList(),
                        reach));
    }

    private static boolean heldFor(LensUnit unit, Set<String> bookings) {
        return unit.state() != UnitState.IMPLANTED
                && unit.heldFor().map(bookings::contains).orElse(false);
    }

    private static ShortageReason reason(LensNeed need, List<LensUnit> shelf, Reach reach) {
        if (shelf.isEmpty()) {
            return ShortageReason.NONE_HELD;
        }
        List<LensUnit> usable = shelf.stream()
                .filter(unit -> unit.state() != UnitState.QUARANTINED)
                .toList();
        if (usable.isEmpty()) {
            return ShortageReason.ALL_QUARANTINED;
        }
        if (usable.stream().noneMatch(unit -> unit.isInDateOn(need.day()))) {
            return ShortageReason.EXPIRED_BY_THE_DAY;
        }
        return usable.stream().noneMatch(unit -> reach.serves(unit, need))
                ? ShortageReason.TOO_FAR
                : ShortageReason.ALL_PROMISED;
    }

    private static List<Order> orders(LensKind kind, List<Slot> unmet, Reach reach) {
        record Delivery(LocalDate day, String location) {}
        Function<Slot, Delivery> delivery = slot -> new Delivery(slot.day(), slot.location());
        List<Order> orders = new ArrayList<>();
        unmet.stream().collect(Collectors.groupingBy(delivery)).forEach((where, slots) -> {
            LocalDate orderBy = reach.policy().leadTime().value().before(where.day());
            Set<String> bookings = new TreeSet<>();
            slots.forEach(slot -> slot.needs().forEach(need -> bookings.add(need.booking())));
            orders.add(new Order(
                    kind,
                    slots.size(),
                    where.location(),
                    where.day(),
                    orderBy,
                    List.copyOf(bookings),
                    orderBy.isBefore(reach.today())));
        });
        return orders;
    }

    private static <T> void requireDistinct(Stream<T> listed, String what) {
        Set<T> seen = new HashSet<>();
        listed.filter(each -> !seen.add(each)).findFirst().ifPresent(twice -> {
            throw new IllegalArgumentException("The same " + what + " is listed twice: " + twice);
        });
    }
}
