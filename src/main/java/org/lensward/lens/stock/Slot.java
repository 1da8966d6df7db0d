package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.lensward.lens.KitRole;

/**
 * A place for one carton: one need, or as many as one carton may stand by for.
 *
 * @param needs of one kind, role, day and site, bookings ascending; never empty
 */
record Slot(List<LensNeed> needs) {

    static final Comparator<LensNeed> BY_URGENCY = Comparator.comparing(LensNeed::role)
            .thenComparing(LensNeed::day)
            .thenComparing(LensNeed::location)
            .thenComparing(LensNeed::booking);

    /**
     * What slots have in common that a carton can tell.
     *
     * @param role what for
     * @param day when
     * @param size for how many operations
     * @param location where
     */
    record Place(KitRole role, LocalDate day, int size, String location) implements Comparable<Place> {

        /** First served first: the role, then the earlier day, then the more operations. */
        static final Comparator<Place> BY_WEIGHT = Comparator.comparing(Place::role)
                .thenComparing(Place::day)
                .thenComparing(Place::size, Comparator.reverseOrder());

        private static final Comparator<Place> ORDER = BY_WEIGHT.thenComparing(Place::location);

        @Override
        public int compareTo(Place other) {
            return ORDER.compare(this, other);
        }
    }

    Slot {
        needs = List.copyOf(needs);
    }

    /** As few as the policy allows. */
    static List<Slot> of(List<LensNeed> needs, StockPolicy policy) {
        TreeMap<Place, List<LensNeed>> alike = new TreeMap<>();
        needs.stream().sorted(BY_URGENCY).forEach(need -> alike.computeIfAbsent(
                        placeOf(need, 1), any -> new ArrayList<>())
                .add(need));
        List<Slot> slots = new ArrayList<>();
        alike.forEach((place, members) -> {
            int most = policy.operationsPerCarton(place.role());
            for (int first = 0; first < members.size(); first += most) {
                slots.add(new Slot(members.subList(first, Math.min(first + most, members.size()))));
            }
        });
        return slots;
    }

    Place place() {
        return placeOf(needs.get(0), needs.size());
    }

    LocalDate day() {
        return needs.get(0).day();
    }

    String location() {
        return needs.get(0).location();
    }

    static Place placeOf(LensNeed need, int size) {
        return new Place(need.role(), need.day(), size, need.location());
    }
}
