package org.lensward.record.stock;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.lens.stock.Allocation;
import org.lensward.lens.stock.Demand;
import org.lensward.lens.stock.LensNeed;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Offer;
import org.lensward.lens.stock.ParLevel;
import org.lensward.lens.stock.ParLevels;
import org.lensward.lens.stock.StockCheck;
import org.lensward.lens.stock.StockPolicy;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;

/**
 * The stock check before theatre, on what the record holds.
 *
 * @param needs every lens of every kit of the days looked at
 * @param allocation who gets what, what is short, what to order
 * @param offers the nearest power in stock for what is short, with what it would leave
 * @param levels of every kind of lens that a site holds, used or has on order; each site by itself
 * @param expiring cartons on the shelf that soon go out of date
 */
public record StockSheet(
        List<LensNeed> needs,
        Allocation allocation,
        List<Offer> offers,
        List<SiteLevels> levels,
        List<LensUnit> expiring) {

    public StockSheet {
        needs = List.copyOf(needs);
        offers = List.copyOf(offers);
        levels = List.copyOf(levels);
        expiring = List.copyOf(expiring);
    }

    /**
     * What to ask the record for, the bank's cartons apart.
     *
     * @param policy how far demand is looked back on
     * @param today the day of asking
     */
    public static List<String> questions(StockPolicy policy, LocalDate today) {
        LocalDate since = policy.common().value().before(today);
        return Stream.concat(
                        StoredPlan.QUESTIONS.stream(),
                        Stream.of(
                                "Location?_count=500",
                                "DeviceDefinition?_count=500",
                                "SupplyRequest?_count=500",
                                "DeviceUseStatement?_lastUpdated=ge" + since + "&_count=500"))
                .toList();
    }

    /**
     * The check of some days.
     *
     * @param shelf plans, locations, use and orders
     * @param units every carton of the bank
     * @param days the first and the last day looked at
     */
    public static StockSheet of(Shelf shelf, List<LensUnit> units, StockPolicy policy, Days days) {
        Sites sites = new Sites(shelf);
        List<LensUnit> sited = units.stream().map(sites::at).toList();
        KitNeeds kits = new KitNeeds(shelf);
        List<LensNeed> needs = kits.between(days.from(), days.to());
        Allocation allocation = StockCheck.allocate(needs, sited, policy, days.today());
        return new StockSheet(
                needs,
                allocation,
                allocation.free().offers(allocation.shortages(), kits::alternatives),
                levels(new Use(shelf, sites), sited, policy, days.today()),
                new ParLevels(policy).expiringSoon(units, days.today()));
    }

    private static List<SiteLevels> levels(Use use, List<LensUnit> sited, StockPolicy policy, LocalDate today) {
        ParLevels par = new ParLevels(policy);
        return Stream.concat(sited.stream().map(LensUnit::location), use.orderedFor())
                .distinct()
                .sorted()
                .map(site -> {
                    List<LensUnit> here = sited.stream()
                            .filter(unit -> unit.location().equals(site))
                            .toList();
                    List<Demand> demands = use.of(site, here, policy.common().value(), today);
                    return new SiteLevels(site, par.of(demands, here, today));
                })
                .toList();
    }

    /** What people must know of one booking's lenses. */
    public List<Finding> findings(Evidence booking) {
        return allocation.findings(booking);
    }

    /**
     * How one site's shelves stand.
     *
     * @param site such as {@code Location/main-site}
     * @param levels of each kind, in order of kind
     */
    public record SiteLevels(String site, List<ParLevel> levels) {

        public SiteLevels {
            levels = List.copyOf(levels);
        }
    }

    /**
     * Which days are looked at, and from when.
     *
     * @param from the first
     * @param to the last
     * @param today the day of looking
     */
    public record Days(LocalDate from, LocalDate to, LocalDate today) {

        public Days {
            if (to.isBefore(from)) {
                throw new IllegalArgumentException("The last day, " + to + ", is before the first, " + from);
            }
        }
    }
}
