package org.lensward.board.api;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lensward.board.store.StockDesk;
import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.LensNeed;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Order;
import org.lensward.record.stock.StockSheet;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Whether every lens of the coming days is in the building, and what to order. */
@RestController
@RequestMapping("/api/stock")
@Tag(name = "Stock")
public final class StockApi {

    private final BankDesk bank;
    private final StockDesk stock;

    public StockApi(BankDesk bank, StockDesk stock) {
        this.bank = bank;
        this.stock = stock;
    }

    /**
     * The stock check of some days.
     *
     * @param needs every lens of every kit, with its carton or what is short
     * @param findings for each booking: short, late, to be fetched, shared, held in vain
     * @param orders what to order
     * @param belowPar kinds of which fewer are there than ought to be
     * @param expiring cartons that soon go out of date
     * @param bank what the bank could not read; a carton among it was not looked at
     */
    public record Sheet(
            List<Need> needs,
            List<Found> findings,
            List<Supply> orders,
            List<Level> belowPar,
            List<Carton> expiring,
            List<Found> bank) {}

    /**
     * One lens of one kit.
     *
     * @param booking whose
     * @param role what it is for
     * @param lens model and power
     * @param day of the operation
     * @param unit the carton for it
     * @param alternative where it is short: the nearest power in stock
     * @param predicted what that would leave
     */
    public record Need(
            String booking,
            String role,
            String lens,
            LocalDate day,
            Optional<String> unit,
            Optional<Amount> alternative,
            Optional<Amount> predicted) {}

    /**
     * An order.
     *
     * @param lens model and power
     * @param count cartons
     * @param location the site
     * @param neededBy the day of the operations
     * @param orderBy the last day on which it arrives in time
     * @param late whether that day is past
     * @param bookings for whom
     */
    public record Supply(
            String lens,
            int count,
            String location,
            LocalDate neededBy,
            LocalDate orderBy,
            boolean late,
            List<String> bookings) {}

    /**
     * A kind below par.
     *
     * @param lens model and power
     * @param onHand free and in date
     * @param onOrder under way
     * @param par what there ought to be
     * @param order what to order
     */
    public record Level(String lens, int onHand, int onOrder, int par, int order) {}

    @Operation(summary = "Looks for every lens of every planned kit of those days")
    @GetMapping
    public Sheet stock(@RequestParam LocalDate from, @RequestParam LocalDate to) {
        Outcome<List<LensUnit>> units = bank.units();
        return shown(
                stock.check(stock.between(from, to), Refusal.unless(units)).sheet(),
                units.findings().stream().map(Found::of).toList());
    }

    @Operation(summary = "Writes the orders of those days as SupplyRequests; ordered twice, it is ordered once")
    @PostMapping("/orders")
    public List<Supply> order(@RequestParam LocalDate from, @RequestParam LocalDate to) {
        return supplies(stock.order(stock.check(stock.between(from, to), bank.all())));
    }

    private static List<Supply> supplies(List<Order> orders) {
        return orders.stream()
                .map(order -> new Supply(
                        order.kind().toString(),
                        order.count(),
                        order.location(),
                        order.neededBy(),
                        order.orderBy(),
                        order.late(),
                        order.bookings()))
                .toList();
    }

    private static Sheet shown(StockSheet sheet, List<Found> bank) {
        return new Sheet(
                sheet.needs().stream().map(need -> need(sheet, need)).toList(),
                sheet.needs().stream()
                        .map(LensNeed::booking)
                        .distinct()
                        .flatMap(booking -> sheet.findings(new Evidence(booking, "", "")).stream())
                        .map(Found::of)
                        .toList(),
                supplies(sheet.allocation().orders()),
                sheet.levels().stream()
                        .flatMap(site -> site.levels().stream())
                        .filter(level -> level.suggestedOrder() > 0)
                        .map(level -> new Level(
                                level.kind().toString(),
                                level.onHand(),
                                level.onOrder(),
                                level.par(),
                                level.suggestedOrder()))
                        .toList(),
                sheet.expiring().stream().map(Carton::of).toList(),
                bank);
    }

    private static Need need(StockSheet sheet, LensNeed need) {
        var offer = sheet.offers().stream()
                .filter(each -> each.need().equals(need))
                .map(each -> each.alternative())
                .findFirst();
        return new Need(
                need.booking(),
                need.role().code(),
                LensKind.of(need).toString(),
                need.day(),
                sheet.allocation().unitFor(need).map(unit -> unit.evidence().resource()),
                offer.map(each -> Amount.of(each.power())),
                offer.map(each -> Amount.of(each.predicted())));
    }
}
