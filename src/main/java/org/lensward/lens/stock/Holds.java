package org.lensward.lens.stock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

/** Cartons of one kind that are promised already serve the booking they are promised to, before all else. */
final class Holds {

    /** Cartons that expire together by name. */
    static final Comparator<LensUnit> FIRST_EXPIRED_FIRST = Comparator.comparing(
                    (LensUnit unit) -> unit.identity().expiry())
            .thenComparing(unit -> unit.evidence().resource());

    /** Taken to theatre before reserved. */
    private static final Comparator<LensUnit> NEAREST_THE_EYE =
            Comparator.comparing(LensUnit::state, Comparator.reverseOrder()).thenComparing(FIRST_EXPIRED_FIRST);

    private final Reach reach;
    private final Map<LensUnit, List<LensNeed>> served = new LinkedHashMap<>();
    private final List<LensNeed> open;

    /**
     * Settles what is promised.
     *
     * @param needs of one kind
     * @param units of the same kind, in any state
     * @param reach what can be where by when
     */
    Holds(List<LensNeed> needs, List<LensUnit> units, Reach reach) {
        this.reach = reach;
        this.open = new ArrayList<>(needs.stream().sorted(Slot.BY_URGENCY).toList());
        Map<String, List<LensUnit>> promised = units.stream()
                .filter(unit -> unit.state() == UnitState.RESERVED || unit.state() == UnitState.PICKED)
                .sorted(NEAREST_THE_EYE)
                .collect(Collectors.groupingBy(
                        unit -> unit.heldFor().orElseThrow(), Collectors.toCollection(ArrayList::new)));
        keepPromises(promised);
        served.keySet().forEach(this::standBy);
    }

    /** Needs that nothing promised serves. */
    List<LensNeed> open() {
        return List.copyOf(open);
    }

    List<Assignment> assignments() {
        return served.entrySet().stream()
                .map(entry -> reach.assign(entry.getKey(), new Slot(entry.getValue())))
                .toList();
    }

    private void keepPromises(Map<String, List<LensUnit>> promised) {
        for (Iterator<LensNeed> needs = open.iterator(); needs.hasNext(); ) {
            LensNeed need = needs.next();
            List<LensUnit> own = promised.getOrDefault(need.booking(), List.of());
            Optional<LensUnit> unit =
                    own.stream().filter(held -> reach.serves(held, need)).findFirst();
            if (unit.isPresent()) {
                own.remove(unit.get());
                served.put(unit.get(), new ArrayList<>(List.of(need)));
                needs.remove();
            }
        }
    }

    /** A back-up promised to one stands by for others too, as far as its role is shared. */
    private void standBy(LensUnit unit) {
        List<LensNeed> needs = Objects.requireNonNull(served.get(unit));
        LensNeed first = needs.get(0);
        int more = reach.policy().operationsPerCarton(first.role()) - 1;
        List<LensNeed> joining = open.stream()
                .filter(need -> Slot.placeOf(need, 1).equals(Slot.placeOf(first, 1)))
                .limit(more)
                .toList();
        needs.addAll(joining);
        open.removeAll(joining);
    }
}
