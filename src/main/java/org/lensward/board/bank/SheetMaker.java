package org.lensward.board.bank;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.board.api.Found;
import org.lensward.board.store.BankSettings;
import org.lensward.board.store.StockDesk;
import org.lensward.board.store.StoreState;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.LensNeed;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Order;
import org.lensward.lens.stock.ParLevel;
import org.lensward.lens.stock.ParLevels;
import org.lensward.lens.stock.Shortage;
import org.lensward.lens.stock.StockPolicy;
import org.lensward.lens.stock.UnitState;
import org.lensward.plan.Policy;
import org.lensward.record.Shelf;
import org.lensward.record.stock.Sites;
import org.lensward.record.stock.StockSheet;
import org.lensward.record.stock.StockSheet.SiteLevels;

/** Writes the Bank page's sheet from what is kept in memory. Asks the record nothing. */
public final class SheetMaker {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm:ss");

    private final StockPolicy policy;
    private final BankSettings settings;
    private final Clock clock;

    public SheetMaker(Policy policy, BankSettings settings, Clock clock) {
        this.policy = policy.stock();
        this.settings = settings;
        this.clock = clock;
    }

    /** Everything, or one site's strip with everything else. */
    BankSheet sheet(StoreState state, Optional<String> site) {
        LocalDate today = LocalDate.now(clock);
        Shelf shelf = state.checked().map(StockDesk.Checked::shelf).orElseGet(() -> new Shelf(new Bundle()));
        Names names = new Names(shelf);
        Optional<StockSheet> stock = state.checked().map(StockDesk.Checked::sheet);
        List<SiteLevels> levels = stock.map(StockSheet::levels).orElse(List.of());
        List<LensUnit> units = state.standing().units();
        CartonLine.Writer lines = lines(names);
        List<LensUnit> expiring = new ParLevels(policy).expiringSoon(units, today);
        List<BankSheet.Level> below =
                levels.stream().flatMap(each -> below(each, names).stream()).toList();
        return new BankSheet(
                state.mark(),
                time(state.standing().asOf()),
                state.checked().map(any -> time(state.checkedAt())),
                state.isAway(),
                site.orElse(""),
                new StripMaker(names, new Sites(shelf), policy, today).strip(units, levels, site),
                today.plusDays(settings.days() - 1L),
                settings.days(),
                stock.map(each -> shorts(each, names)).orElse(List.of()),
                stock.map(each -> each.allocation().orders().stream()
                                .map(order -> supply(order, names))
                                .toList())
                        .orElse(List.of()),
                promises(units, stock, lines),
                expiring.stream().limit(BankSheet.SHOWN).map(lines::line).toList(),
                expiring.size(),
                below.stream().limit(BankSheet.SHOWN).toList(),
                below.size(),
                state.standing().findings().stream().map(Found::of).toList());
    }

    /** Every carton soon out of date. */
    List<CartonLine> expiring(StoreState state) {
        return new ParLevels(policy)
                .expiringSoon(state.standing().units(), LocalDate.now(clock)).stream()
                        .map(lines(names(state))::line)
                        .toList();
    }

    /** The cartons of one kind, those that are gone left out, the first to expire first. */
    List<CartonLine> kind(StoreState state, LensKind kind) {
        return state.standing().units().stream()
                .filter(unit -> unit.state() != UnitState.IMPLANTED && unit.state() != UnitState.WASTED)
                .filter(unit -> LensKind.of(unit).equals(kind))
                .sorted(Comparator.comparing(unit -> unit.identity().expiry()))
                .map(lines(names(state))::line)
                .toList();
    }

    Names names(StoreState state) {
        return new Names(state.checked().map(StockDesk.Checked::shelf).orElseGet(() -> new Shelf(new Bundle())));
    }

    CartonLine.Writer lines(Names names) {
        LocalDate today = LocalDate.now(clock);
        return new CartonLine.Writer(names, today, policy.expiresSoon().value().after(today));
    }

    String time(Instant at) {
        return TIME.format(at.atZone(clock.getZone()));
    }

    private static List<BankSheet.Short> shorts(StockSheet stock, Names names) {
        return stock.allocation().shortages().stream()
                .map(shortage -> shorted(shortage, stock, names))
                .toList();
    }

    private static BankSheet.Short shorted(Shortage shortage, StockSheet stock, Names names) {
        LensNeed need = shortage.need();
        Optional<Order> order = stock.allocation().orders().stream()
                .filter(each -> each.kind().equals(LensKind.of(need))
                        && each.location().equals(need.location())
                        && each.bookings().contains(need.booking()))
                .findFirst();
        return new BankSheet.Short(
                names.patient(need.booking()),
                Names.id(need.booking()),
                need.role().code().replace('-', ' '),
                names.lens(LensKind.of(need)),
                need.day(),
                names.place(need.location()),
                shortage.reason().toString(),
                stock.offers().stream()
                        .filter(offer -> offer.need().equals(need))
                        .map(offer -> offer.alternative().power().signed() + " at "
                                + names.place(offer.unit().location()) + ", predicted to leave "
                                + offer.alternative().predicted().signed())
                        .findFirst(),
                order.map(Order::orderBy),
                order.filter(Order::late).isPresent());
    }

    private static BankSheet.Supply supply(Order order, Names names) {
        return new BankSheet.Supply(
                order.count(),
                names.lens(order.kind()),
                names.place(order.location()),
                order.neededBy(),
                order.orderBy(),
                order.late(),
                order.bookings().size());
    }

    private static List<BankSheet.Promise> promises(
            List<LensUnit> units, Optional<StockSheet> stock, CartonLine.Writer lines) {
        Map<String, LocalDate> days = stock.map(StockSheet::needs).orElse(List.of()).stream()
                .collect(Collectors.toMap(LensNeed::booking, LensNeed::day, (one, other) -> one));
        Set<String> vain = new HashSet<>(stock.map(each -> each.allocation().heldInVain()).orElse(List.of()).stream()
                .map(unit -> unit.evidence().resource())
                .toList());
        return units.stream()
                .filter(unit -> unit.state() == UnitState.RESERVED || unit.state() == UnitState.PICKED)
                .map(unit -> new BankSheet.Promise(
                        unit.heldFor().map(days::get),
                        lines.line(unit),
                        vain.contains(unit.evidence().resource())))
                .sorted(Comparator.comparing(
                                (BankSheet.Promise each) -> each.day().orElse(LocalDate.MAX))
                        .thenComparing(each -> each.carton().patient().orElse(""))
                        .thenComparing(each -> each.carton().lens()))
                .toList();
    }

    private static List<BankSheet.Level> below(SiteLevels site, Names names) {
        Function<ParLevel, BankSheet.Level> line = level -> new BankSheet.Level(
                names.lens(level.kind()),
                KindAddress.of(level.kind()).path(),
                names.place(site.site()),
                level.onHand(),
                level.onOrder(),
                level.par(),
                level.suggestedOrder());
        return site.levels().stream()
                .filter(level -> level.suggestedOrder() > 0)
                .map(line)
                .toList();
    }
}
