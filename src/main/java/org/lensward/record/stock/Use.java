package org.lensward.record.stock;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r4.model.DeviceUseStatement.DeviceUseStatementStatus;
import org.hl7.fhir.r4.model.SupplyRequest;
import org.hl7.fhir.r4.model.SupplyRequest.SupplyRequestStatus;
import org.lensward.lens.stock.Demand;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.LensUnit;
import org.lensward.quantity.Days;
import org.lensward.record.Dates;
import org.lensward.record.Shelf;

/** How much of each kind a site implanted lately, and how much is on order for it. */
final class Use {

    private final Shelf shelf;
    private final Sites sites;

    Use(Shelf shelf, Sites sites) {
        this.shelf = shelf;
        this.sites = sites;
    }

    /**
     * The demand of every kind that the site holds, used or has on order.
     *
     * @param here the site's cartons, in any state
     */
    List<Demand> of(String site, List<LensUnit> here, Days over, LocalDate today) {
        Map<LensKind, Integer> used = new TreeMap<>();
        here.forEach(unit -> used.putIfAbsent(LensKind.of(unit), 0));
        implanted(here, over, today).forEach(kind -> used.merge(kind, 1, Integer::sum));
        Map<LensKind, Integer> ordered = ordered(site);
        ordered.keySet().forEach(kind -> used.putIfAbsent(kind, 0));
        return used.entrySet().stream()
                .map(each -> new Demand(each.getKey(), each.getValue(), over, ordered.getOrDefault(each.getKey(), 0)))
                .toList();
    }

    /** Every site something is on order for. */
    Stream<String> orderedFor() {
        return orders().map(this::site);
    }

    /** A carton goes into one eye, however often that is stated. */
    private Stream<LensKind> implanted(List<LensUnit> here, Days over, LocalDate today) {
        Map<String, LensUnit> byName = new TreeMap<>();
        here.forEach(unit -> byName.put(unit.evidence().resource(), unit));
        Set<String> counted = new HashSet<>();
        return shelf.all(DeviceUseStatement.class)
                .filter(use -> use.getStatus() != DeviceUseStatementStatus.ENTEREDINERROR)
                .filter(use -> Dates.day(use.getTiming())
                        .filter(day -> !day.isAfter(today) && !over.after(day).isBefore(today))
                        .isPresent())
                .map(use -> Shelf.name(use.getDevice()))
                .filter(counted::add)
                .map(byName::get)
                .filter(Objects::nonNull)
                .map(LensKind::of);
    }

    private Map<LensKind, Integer> ordered(String site) {
        Map<LensKind, Integer> ordered = new TreeMap<>();
        orders().filter(request -> site(request).equals(site)).forEach(request -> SupplyRequests.kind(request)
                .ifPresent(kind ->
                        ordered.merge(kind, request.getQuantity().getValue().intValue(), Integer::sum)));
        return ordered;
    }

    private Stream<SupplyRequest> orders() {
        return shelf.all(SupplyRequest.class)
                .filter(request -> request.getStatus() == SupplyRequestStatus.ACTIVE)
                .filter(request -> request.getQuantity().hasValue())
                .filter(request -> SupplyRequests.kind(request).isPresent());
    }

    private String site(SupplyRequest request) {
        return request.hasDeliverTo() ? sites.of(Shelf.name(request.getDeliverTo())) : KitNeeds.NO_SITE;
    }
}
