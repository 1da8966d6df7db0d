package org.lensward.board.bank;

import static org.lensward.lens.stock.UnitState.AVAILABLE;
import static org.lensward.lens.stock.UnitState.PICKED;
import static org.lensward.lens.stock.UnitState.QUARANTINED;
import static org.lensward.lens.stock.UnitState.RESERVED;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.ParLevel;
import org.lensward.lens.stock.StockPolicy;
import org.lensward.quantity.Dioptres;
import org.lensward.record.stock.Sites;
import org.lensward.record.stock.StockSheet.SiteLevels;

/** Counts cartons into a heat strip. On hand is counted anew; par and orders under way are those of the last stock check. */
final class StripMaker {

    private final Names names;
    private final Sites sites;
    private final StockPolicy policy;
    private final LocalDate today;

    StripMaker(Names names, Sites sites, StockPolicy policy, LocalDate today) {
        this.names = names;
        this.sites = sites;
        this.policy = policy;
        this.today = today;
    }

    /** What is known of one kind while counting. */
    private static final class Tally {
        private final List<LensUnit> units = new ArrayList<>();
        private final Map<String, ParLevel> levels = new HashMap<>();
    }

    /** A row's model and cylinder. */
    private record Line(String model, Optional<Dioptres> cylinder) {}

    /**
     * The strip.
     *
     * @param site the only one to count, or every one
     */
    HeatStrip strip(List<LensUnit> units, List<SiteLevels> levels, Optional<String> site) {
        Map<String, String> siteOf = new HashMap<>();
        units.forEach(unit -> siteOf.computeIfAbsent(unit.location(), sites::of));
        Predicate<String> shown =
                each -> site.filter(asked -> !asked.equals(each)).isEmpty();
        Map<LensKind, Tally> tallies = new HashMap<>();
        units.stream()
                .filter(unit -> isHere(unit) && shown.test(siteOf.getOrDefault(unit.location(), "")))
                .forEach(unit -> tally(tallies, LensKind.of(unit)).units.add(unit));
        levels.stream().filter(each -> shown.test(each.site())).forEach(each -> each.levels().stream()
                .filter(level -> level.par() > 0)
                .forEach(level -> tally(tallies, level.kind()).levels.put(each.site(), level)));
        TreeSet<Dioptres> steps = new TreeSet<>();
        tallies.keySet().forEach(kind -> steps.add(kind.power()));
        return new HeatStrip(
                steps.stream().map(Dioptres::signed).toList(),
                rows(tallies, List.copyOf(steps), siteOf),
                siteOf.values().stream()
                        .distinct()
                        .map(each -> new Names.Choice(each, names.place(each)))
                        .sorted(Comparator.comparing(Names.Choice::words))
                        .toList());
    }

    private static Tally tally(Map<LensKind, Tally> tallies, LensKind kind) {
        return tallies.computeIfAbsent(kind, any -> new Tally());
    }

    private static boolean isHere(LensUnit unit) {
        return unit.state() == AVAILABLE
                || unit.state() == RESERVED
                || unit.state() == PICKED
                || unit.state() == QUARANTINED;
    }

    private List<HeatStrip.Row> rows(Map<LensKind, Tally> tallies, List<Dioptres> steps, Map<String, String> siteOf) {
        Map<Line, Map<Dioptres, HeatStrip.Cell>> lines = new HashMap<>();
        tallies.forEach(
                (kind, tally) -> lines.computeIfAbsent(new Line(kind.model(), kind.cylinder()), any -> new HashMap<>())
                        .put(kind.power(), cell(kind, tally, siteOf)));
        return lines.entrySet().stream()
                .map(each -> row(each.getKey(), each.getValue(), steps))
                .sorted(Comparator.comparing(HeatStrip.Row::model)
                        .thenComparing(row -> row.cylinder().orElse("")))
                .toList();
    }

    private HeatStrip.Row row(Line line, Map<Dioptres, HeatStrip.Cell> cells, List<Dioptres> steps) {
        return new HeatStrip.Row(
                names.model(new LensKind(line.model(), steps.get(0), line.cylinder())),
                line.cylinder().map(each -> "cylinder " + each.rounded()),
                cells.values().stream().mapToInt(HeatStrip.Cell::count).sum(),
                (int) cells.values().stream().filter(HeatStrip.Cell::isBelow).count(),
                steps.stream().map(step -> Optional.ofNullable(cells.get(step))).toList());
    }

    private HeatStrip.Cell cell(LensKind kind, Tally tally, Map<String, String> siteOf) {
        LocalDate soon = policy.expiresSoon().value().after(today);
        KindAddress address = KindAddress.of(kind);
        return new HeatStrip.Cell(
                address.id(),
                address.path(),
                kind.power().signed(),
                count(tally, unit -> unit.state() == AVAILABLE && unit.isInDateOn(today)),
                count(tally, unit -> unit.state() == RESERVED || unit.state() == PICKED),
                count(
                        tally,
                        unit -> unit.state() != QUARANTINED
                                && unit.state() != PICKED
                                && !unit.identity().expiry().isAfter(soon)),
                count(tally, unit -> unit.state() == QUARANTINED),
                tally.levels.values().stream().mapToInt(ParLevel::par).sum(),
                tally.levels.entrySet().stream()
                        .anyMatch(each -> isBelow(each.getValue(), each.getKey(), tally, siteOf)));
    }

    private boolean isBelow(ParLevel level, String site, Tally tally, Map<String, String> siteOf) {
        LocalDate delivery = policy.leadTime().value().after(today);
        int onHand = count(
                tally,
                unit -> unit.state() == AVAILABLE
                        && unit.isInDateOn(delivery)
                        && site.equals(siteOf.get(unit.location())));
        return onHand + level.onOrder() < level.par();
    }

    private static int count(Tally tally, Predicate<LensUnit> which) {
        return (int) tally.units.stream().filter(which).count();
    }
}
