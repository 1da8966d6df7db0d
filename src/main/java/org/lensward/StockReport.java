package org.lensward;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.Assignment;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.LensNeed;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Offer;
import org.lensward.lens.stock.Order;
import org.lensward.lens.stock.ParLevel;
import org.lensward.lens.stock.Shortage;
import org.lensward.lens.stock.StockPolicy;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;
import org.lensward.record.stock.StockSheet;
import org.lensward.record.stock.SupplyRequests;

/** The stock check for a terminal. Names nobody: bookings, cartons and places only. */
final class StockReport {

    private final Shelf shelf;
    private final StockSheet sheet;
    private final StringBuilder text = new StringBuilder();
    private Map<String, LensUnit> bank = Map.of();

    StockReport(Shelf shelf, StockSheet sheet) {
        this.shelf = shelf;
        this.sheet = sheet;
    }

    String of(Outcome<List<LensUnit>> units, StockPolicy policy) {
        bank = units.value().orElse(List.of()).stream()
                .collect(Collectors.toMap(unit -> unit.evidence().resource(), Function.identity()));
        bookings();
        part("Nothing planned to look for (withheld or not yet planned), any day", unplanned());
        part("To order", sheet.allocation().orders().stream().map(this::order));
        part("Below par", sheet.levels().stream().flatMap(this::belowPar));
        part(
                "Expired or to expire within "
                        + (int) policy.expiresSoon().value().value() + " days",
                sheet.expiring().stream().map(unit -> lens(LensKind.of(unit)) + ", " + carton(unit)));
        part(
                "Promised to a booking that cannot use it or does not need it",
                sheet.allocation().heldInVain().stream()
                        .map(unit -> lens(LensKind.of(unit)) + ", " + carton(unit) + ", "
                                + unit.state().code() + " for " + unit.heldFor().orElse("nobody")));
        part(
                "Not read",
                units.findings().stream()
                        .map(found -> found.evidence().get(0) + ": " + found.message() + " " + found.remedy()));
        return text.toString();
    }

    private void bookings() {
        Map<String, List<LensNeed>> kits = new TreeMap<>();
        sheet.needs().stream().sorted(Comparator.comparing(LensNeed::role)).forEach(need -> kits.computeIfAbsent(
                        need.day() + "  " + need.booking() + " at " + need.location(), any -> new ArrayList<>())
                .add(need));
        kits.forEach((booking, needs) -> part(
                booking,
                needs.stream().map(need -> need.role().code() + ": " + lens(LensKind.of(need)) + ", " + found(need))));
        if (kits.isEmpty()) {
            line("No lens is planned for these days.");
        }
    }

    private String found(LensNeed need) {
        return sheet.allocation().assignments().stream()
                .filter(each -> each.needs().contains(need))
                .map(each -> assigned(each, need))
                .findFirst()
                .orElseGet(() -> missing(need));
    }

    private String assigned(Assignment found, LensNeed need) {
        String way = found.transfer()
                .map(each -> ", to be fetched from " + each.from() + " ("
                        + each.takes().value().rounded() + ")")
                .orElse("");
        String others = found.needs().stream()
                .filter(each -> !each.equals(need))
                .map(LensNeed::booking)
                .collect(Collectors.joining(", "));
        return carton(found.unit()) + way + (others.isEmpty() ? "" : ", shared with " + others);
    }

    private String missing(LensNeed need) {
        String why = sheet.allocation().shortages().stream()
                .filter(each -> each.need().equals(need))
                .map(Shortage::reason)
                .map(Object::toString)
                .findFirst()
                .orElse("not looked for");
        String instead = sheet.offers().stream()
                .filter(each -> each.need().equals(need))
                .map(this::offer)
                .findFirst()
                .orElse("");
        return "SHORT: " + why + instead;
    }

    private String offer(Offer offer) {
        return "; nearest in stock " + offer.alternative().power().signed() + " (" + carton(offer.unit())
                + "), predicted to leave " + offer.alternative().predicted().signed() + ", if the surgeon chooses it";
    }

    private Stream<String> unplanned() {
        return StoredPlan.all(shelf)
                .filter(plan -> plan.booking().getStatus() == ServiceRequestStatus.ACTIVE)
                .filter(plan -> plan.kit().isEmpty())
                .map(plan -> Shelf.name(plan.booking()))
                .sorted();
    }

    private String order(Order order) {
        return order.count() + " x " + lens(order.kind()) + " to " + order.location() + " for "
                + String.join(", ", order.bookings()) + ": needed by " + order.neededBy() + ", order by "
                + order.orderBy() + (order.late() ? " (LATE)" : "");
    }

    private Stream<String> belowPar(StockSheet.SiteLevels site) {
        return site.levels().stream()
                .filter(level -> level.suggestedOrder() > 0)
                .map(level -> level(level, site));
    }

    private String level(ParLevel level, StockSheet.SiteLevels site) {
        return lens(level.kind()) + " at " + site.site() + ": " + level.onHand() + " on hand, " + level.onOrder()
                + " on order, par " + level.par() + "; order " + level.suggestedOrder();
    }

    private String lens(LensKind kind) {
        return SupplyRequests.name(kind, shelf) + " " + kind.power().signed()
                + kind.cylinder().map(each -> " cylinder " + each.rounded()).orElse("");
    }

    /** Where it lies, not only at which site. */
    private String carton(LensUnit unit) {
        Optional<LensUnit> lying = Optional.ofNullable(bank.get(unit.evidence().resource()));
        return lying.map(LensUnit::location).orElse(unit.location())
                + unit.identity().lot().map(each -> " lot " + each).orElse("")
                + unit.identity().serial().map(each -> " serial " + each).orElse("") + " expires "
                + unit.identity().expiry();
    }

    private void part(String heading, Stream<String> lines) {
        List<String> all = lines.toList();
        if (!all.isEmpty()) {
            line(heading);
            all.forEach(each -> line("  " + each));
        }
    }

    private void line(String words) {
        text.append(words).append(System.lineSeparator());
    }
}
