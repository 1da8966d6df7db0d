package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.lensward.lens.KitRole;

/**
 * How good an allocation is, told from which need gets which carton alone: needs left short by role, then day; the distance cartons travel;
 * the sum of the ranks of their expiry dates. Smaller is better, the first number that differs decides.
 */
record Merit(List<Long> numbers) implements Comparable<Merit> {

    static Merit of(Map<LensNeed, LensUnit> given, List<LensNeed> needs, List<LensUnit> units, StockPolicy policy) {
        List<Long> numbers = new ArrayList<>();
        for (KitRole role : KitRole.values()) {
            for (LocalDate day : new TreeSet<>(needs.stream().map(LensNeed::day).toList())) {
                numbers.add(needs.stream()
                        .filter(need -> need.role() == role && need.day().equals(day) && !given.containsKey(need))
                        .count());
            }
        }
        List<LensUnit> used = given.values().stream().distinct().toList();
        numbers.add(given.entrySet().stream()
                .collect(Collectors.toMap(
                        Map.Entry::getValue, entry -> metres(entry.getKey(), entry.getValue(), policy), Math::max))
                .values()
                .stream()
                .mapToLong(Long::longValue)
                .sum());
        List<LocalDate> expiries = units.stream()
                .map(unit -> unit.identity().expiry())
                .distinct()
                .sorted()
                .toList();
        numbers.add(used.stream()
                .mapToLong(unit -> expiries.indexOf(unit.identity().expiry()) + 1)
                .sum());
        return new Merit(numbers);
    }

    private static long metres(LensNeed need, LensUnit unit, StockPolicy policy) {
        return need.location().equals(unit.location())
                ? 0
                : policy.transfers().stream()
                        .filter(way ->
                                List.of(way.from(), way.to()).containsAll(List.of(need.location(), unit.location())))
                        .mapToLong(way -> Math.round(way.distance().value().value() * 1000))
                        .sum();
    }

    @Override
    public int compareTo(Merit other) {
        return IntStream.range(0, numbers.size())
                .map(place -> Long.compare(numbers.get(place), other.numbers.get(place)))
                .filter(sign -> sign != 0)
                .findFirst()
                .orElse(0);
    }
}
