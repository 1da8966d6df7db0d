package org.lensward.record.stock;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r4.model.SupplyRequest;
import org.hl7.fhir.r4.model.SupplyRequest.SupplyRequestStatus;
import org.lensward.lens.stock.Demand;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.LensUnit;
import org.lensward.quantity.Days;
import org.lensward.record.Dates;
import org.lensward.record.Shelf;

/** How much of each kind was implanted lately, and how much is on order. */
final class Use {

    private Use() {}

    /** The demand of every kind that is held, was used or is ordered. */
    static List<Demand> of(Shelf shelf, List<LensUnit> units, Days over, LocalDate today) {
        Map<String, LensUnit> byName = new TreeMap<>();
        units.forEach(unit -> byName.put(unit.evidence().resource(), unit));
        Map<LensKind, Integer> used = new TreeMap<>();
        units.forEach(unit -> used.putIfAbsent(LensKind.of(unit), 0));
        shelf.all(DeviceUseStatement.class)
                .filter(use -> Dates.day(use.getTiming())
                        .filter(day -> over.after(day).isAfter(today)
                                || over.after(day).isEqual(today))
                        .isPresent())
                .map(use -> byName.get(Shelf.name(use.getDevice())))
                .filter(Objects::nonNull)
                .forEach(unit -> used.merge(LensKind.of(unit), 1, Integer::sum));
        Map<LensKind, Integer> ordered = new TreeMap<>();
        shelf.all(SupplyRequest.class)
                .filter(request -> request.getStatus() == SupplyRequestStatus.ACTIVE)
                .forEach(request -> SupplyRequests.kind(request)
                        .ifPresent(kind -> ordered.merge(
                                kind, request.getQuantity().getValue().intValue(), Integer::sum)));
        return used.entrySet().stream()
                .map(each -> new Demand(each.getKey(), each.getValue(), over, ordered.getOrDefault(each.getKey(), 0)))
                .toList();
    }
}
