package org.lensward.lens.stock;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Who gets which carton of one kind.
 *
 * @param assignments cartons with what they are for
 * @param unmet slots no carton is left for
 */
record KindAllocation(List<Assignment> assignments, List<Slot> unmet) {

    static KindAllocation of(List<LensNeed> needs, List<LensUnit> units, Reach reach) {
        Holds holds = new Holds(needs, units, reach);
        List<Assignment> assignments = new ArrayList<>(holds.assignments());
        List<Slot> slots = Slot.of(holds.open(), reach.policy());
        List<LensUnit> free =
                units.stream().filter(unit -> unit.state() == UnitState.AVAILABLE).toList();
        List<Assignment> fresh = slots.isEmpty() || free.isEmpty()
                ? List.of()
                : new StockNetwork(slots, free, reach).allocate();
        assignments.addAll(fresh);
        Set<Slot> met = new HashSet<>();
        fresh.forEach(assignment -> met.add(new Slot(assignment.needs())));
        return new KindAllocation(
                assignments, slots.stream().filter(slot -> !met.contains(slot)).toList());
    }
}
