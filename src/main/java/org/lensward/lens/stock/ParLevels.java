package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.lensward.quantity.PureNumber;

/**
 * Par levels of one site.
 *
 * <pre>
 * par = D + z sqrt(D), rounded up;   D = mean demand during the lead time
 * </pre>
 *
 * The reorder point of a continuously reviewed item whose demand is taken as Poisson, so that its variance is its mean (Hadley and Whitin,
 * Analysis of Inventory Systems, 1963, chapter 4; Silver, Pyke and Thomas, Inventory and Production Management in Supply Chains, 2017,
 * chapter 6; from memory). A power in common use has the policy's floor. Not modelled: seasons, a lead time that varies, loans.
 */
public final class ParLevels {

    /** What rounding up must not take for a whole carton. */
    private static final double ROUNDING = 1e-9;

    private final StockPolicy policy;

    public ParLevels(StockPolicy policy) {
        this.policy = policy;
    }

    /**
     * The level of each kind asked for, in order of kind.
     *
     * @param demands of one site, each kind once
     * @param units the cartons of that site, in any state
     * @param today the day an order would be sent
     */
    public List<ParLevel> of(List<Demand> demands, List<LensUnit> units, LocalDate today) {
        LocalDate delivery = policy.leadTime().value().after(today);
        Map<LensKind, Long> onHand = units.stream()
                .filter(unit -> unit.state() == UnitState.AVAILABLE && unit.isInDateOn(delivery))
                .collect(Collectors.groupingBy(LensKind::of, Collectors.counting()));
        return demands.stream()
                .sorted(Comparator.comparing(Demand::kind))
                .map(demand -> level(demand, Math.toIntExact(onHand.getOrDefault(demand.kind(), 0L))))
                .toList();
    }

    /** Cartons on the shelf, promised or not, that soon go out of date or have done so, the first to expire first. */
    public List<LensUnit> expiringSoon(List<LensUnit> units, LocalDate today) {
        LocalDate limit = policy.expiresSoon().value().after(today);
        return units.stream()
                .filter(unit -> unit.state() == UnitState.AVAILABLE || unit.state() == UnitState.RESERVED)
                .filter(unit -> !unit.identity().expiry().isAfter(limit))
                .sorted(Holds.FIRST_EXPIRED_FIRST)
                .toList();
    }

    private ParLevel level(Demand demand, int onHand) {
        double daily = demand.used() / demand.over().value();
        double mean = daily * policy.leadTime().value().value();
        double safety = policy.safetyFactor().value().value() * Math.sqrt(mean);
        int computed = (int) Math.ceil(mean + safety - ROUNDING);
        boolean common = daily * policy.common().value().value() >= 1 - ROUNDING;
        int floor = common ? (int) policy.floor().value().value() : 0;
        return new ParLevel(demand.kind(), onHand, demand.onOrder(), PureNumber.of(mean), Math.max(floor, computed));
    }
}
