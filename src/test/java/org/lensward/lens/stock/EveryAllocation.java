package org.lensward.lens.stock;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Tries every way to give free cartons to needs and keeps the best: slow, and too simple to be wrong. */
final class EveryAllocation {

    private final List<LensNeed> needs;
    private final List<LensUnit> units;
    private final StockPolicy policy;
    private final List<Merit> best = new ArrayList<>();

    private EveryAllocation(List<LensNeed> needs, List<LensUnit> units, StockPolicy policy) {
        this.needs = needs;
        this.units = units;
        this.policy = policy;
    }

    static Merit best(List<LensNeed> needs, List<LensUnit> units, StockPolicy policy) {
        EveryAllocation every = new EveryAllocation(needs, units, policy);
        every.give(0, new HashMap<>());
        return every.best.get(0);
    }

    private void give(int index, Map<LensNeed, LensUnit> given) {
        if (index == needs.size()) {
            Merit merit = Merit.of(given, needs, units, policy);
            if (best.isEmpty() || merit.compareTo(best.get(0)) < 0) {
                best.clear();
                best.add(merit);
            }
            return;
        }
        give(index + 1, given);
        LensNeed need = needs.get(index);
        for (LensUnit unit : units) {
            if (serves(unit, need) && mayJoin(need, unit, given)) {
                given.put(need, unit);
                give(index + 1, given);
                given.remove(need);
            }
        }
    }

    private boolean serves(LensUnit unit, LensNeed need) {
        boolean lens = unit.model().equals(need.model())
                && unit.power().equals(need.power())
                && unit.cylinder().equals(need.cylinder());
        boolean inDate = !need.day().isAfter(unit.identity().expiry());
        return lens && inDate && unit.state() == UnitState.AVAILABLE && there(unit.location(), need);
    }

    private boolean there(String from, LensNeed need) {
        long days = ChronoUnit.DAYS.between(Stocks.TODAY, need.day());
        return from.equals(need.location())
                || policy.transfers().stream()
                        .anyMatch(way -> List.of(way.from(), way.to()).containsAll(List.of(from, need.location()))
                                && way.takes().value().value() <= days);
    }

    private boolean mayJoin(LensNeed need, LensUnit unit, Map<LensNeed, LensUnit> given) {
        List<LensNeed> others = given.entrySet().stream()
                .filter(entry -> entry.getValue().equals(unit))
                .map(Map.Entry::getKey)
                .collect(Collectors.toList());
        boolean alike = others.stream()
                .allMatch(other -> other.role() == need.role()
                        && other.day().equals(need.day())
                        && other.location().equals(need.location()));
        double most = Optional.ofNullable(policy.shared().get(need.role()))
                .map(limit -> limit.value().value())
                .orElse(1.0);
        return alike && others.size() < most;
    }
}
