package org.lensward.record.stock;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.lens.stock.Allocation;
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
 * @param levels of every kind of lens the bank knows
 * @param expiring cartons on the shelf that soon go out of date
 */
public record StockSheet(
        List<LensNeed> needs,
        Allocation allocation,
        List<Offer> offers,
        List<ParLevel> levels,
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
                                "SupplyRequest?status=active&_count=500",
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
        ParLevels par = new ParLevels(policy);
        return new StockSheet(
                needs,
                allocation,
                allocation.free().offers(allocation.shortages(), kits::alternatives),
                par.of(Use.of(shelf, units, policy.common().value(), days.today()), units, days.today()),
                par.expiringSoon(units, days.today()));
    }

    /** What people must know of one booking's lenses. */
    public List<Finding> findings(Evidence booking) {
        return allocation.findings(booking);
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
