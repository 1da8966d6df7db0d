package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Who gets which carton of one kind.
 *
 * @param kind model, power and cylinder
 * @param shelf every carton of this kind that is not gone
 * @param assignments cartons with what they are for
 * @param unmet slots no carton is left for
 */
record KindAllocation(LensKind kind, List<LensUnit> shelf, List<Assignment> assignments, List<Slot> unmet) {

    static KindAllocation of(LensKind kind, List<LensNeed> needs, List<LensUnit> shelf, Reach reach) {
        Holds holds = new Holds(needs, shelf, reach);
        List<Assignment> assignments = new ArrayList<>(holds.assignments());
        List<Slot> slots = Slot.of(holds.open(), reach.policy());
        List<LensUnit> free = shelf.stream()
                .filter(unit -> unit.state() == UnitState.AVAILABLE)
                .toList();
        List<Assignment> fresh =
                slots.isEmpty() || free.isEmpty() ? List.of() : new StockNetwork(slots, free, reach).allocate();
        assignments.addAll(fresh);
        Set<Slot> met = new HashSet<>();
        fresh.forEach(assignment -> met.add(new Slot(assignment.needs())));
        List<Slot> unmet = slots.stream().filter(slot -> !met.contains(slot)).toList();
        return new KindAllocation(kind, shelf, assignments, unmet);
    }

    List<Shortage> shortages(Reach reach) {
        return unmet.stream()
                .flatMap(slot -> slot.needs().stream())
                .map(need -> new Shortage(need, reason(need, reach)))
                .toList();
    }

    /** One order for each day and site. */
    List<Order> orders(Reach reach) {
        record Delivery(LocalDate day, String location) {}
        List<Order> orders = new ArrayList<>();
        unmet.stream()
                .collect(Collectors.groupingBy(slot -> new Delivery(slot.day(), slot.location())))
                .values()
                .forEach(slots -> orders.add(order(slots, reach)));
        return orders;
    }

    private Order order(List<Slot> slots, Reach reach) {
        Slot any = slots.get(0);
        LocalDate orderBy = reach.policy().leadTime().value().before(any.day());
        Set<String> bookings = new TreeSet<>();
        slots.forEach(slot -> slot.needs().forEach(need -> bookings.add(need.booking())));
        return new Order(
                kind,
                slots.size(),
                any.location(),
                any.day(),
                orderBy,
                List.copyOf(bookings),
                orderBy.isBefore(reach.today()));
    }

    /** Looking past the cartons the operation has already: a spare is not short because its primary has one. */
    private ShortageReason reason(LensNeed need, Reach reach) {
        if (shelf.isEmpty()) {
            return ShortageReason.NONE_HELD;
        }
        List<LensUnit> others =
                shelf.stream().filter(unit -> !isFor(need.booking(), unit)).toList();
        if (others.isEmpty()) {
            return ShortageReason.NO_FURTHER_ONE;
        }
        List<LensUnit> usable = others.stream()
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

    private boolean isFor(String booking, LensUnit unit) {
        return assignments.stream()
                .filter(each -> each.unit().equals(unit))
                .flatMap(each -> each.needs().stream())
                .anyMatch(each -> each.booking().equals(booking));
    }
}
