package org.lensward.record.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.lens.stock.Stocks.NORTH;
import static org.lensward.lens.stock.Stocks.SOUTH;
import static org.lensward.lens.stock.Stocks.TODAY;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r4.model.DeviceUseStatement.DeviceUseStatementStatus;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.SupplyRequest;
import org.hl7.fhir.r4.model.SupplyRequest.SupplyRequestStatus;
import org.junit.jupiter.api.Test;
import org.lensward.lens.stock.Demand;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Order;
import org.lensward.lens.stock.Stocks;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Days;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Shelf;

/** What was implanted in ninety days, and what is on its way. */
class UseTest {

    private static final LensKind HOUSE = new LensKind("DeviceDefinition/house", Dioptres.of(21.5), Optional.empty());

    private final Bundle bundle = new Bundle();
    private final List<LensUnit> units = new ArrayList<>(List.of(Stocks.unit("free", 400)));

    private void implanted(String carton, LocalDate day, DeviceUseStatementStatus status) {
        if (units.stream().noneMatch(unit -> unit.evidence().resource().equals("Device/" + carton))) {
            units.add(Stocks.held(carton, 400, UnitState.IMPLANTED, "ServiceRequest/" + carton));
        }
        DeviceUseStatement use = new DeviceUseStatement()
                .setStatus(status)
                .setTiming(new Period().setStartElement(new DateTimeType(day + "T10:05:00+01:00")))
                .setDevice(new Reference("Device/" + carton));
        use.setId("use-" + bundle.getEntry().size());
        bundle.addEntry().setResource(use);
    }

    private SupplyRequest ordered(LensKind kind, int count, String site) {
        Order order = new Order(kind, count, site, TODAY, TODAY, List.of("ServiceRequest/b1"), false);
        SupplyRequest request = (SupplyRequest) SupplyRequests.transaction(List.of(order), new Shelf(new Bundle()))
                .getEntryFirstRep()
                .getResource();
        request.setId("order-" + bundle.getEntry().size());
        bundle.addEntry().setResource(request);
        return request;
    }

    private List<Demand> demand(String site) {
        Shelf shelf = new Shelf(bundle);
        List<LensUnit> here =
                units.stream().filter(unit -> unit.location().equals(site)).toList();
        return new Use(shelf, new Sites(shelf)).of(site, here, Days.of(90), TODAY);
    }

    @Test
    void counts_from_ninety_days_ago_to_today_both_included() {
        implanted("long-ago", TODAY.minusDays(91), DeviceUseStatementStatus.ACTIVE);
        implanted("first", TODAY.minusDays(90), DeviceUseStatementStatus.ACTIVE);
        implanted("today", TODAY, DeviceUseStatementStatus.ACTIVE);
        implanted("tomorrow", TODAY.plusDays(1), DeviceUseStatementStatus.ACTIVE);
        assertThat(demand(NORTH)).containsExactly(new Demand(HOUSE, 2, Days.of(90), 0));
    }

    @Test
    void what_was_entered_in_error_or_twice_or_of_no_carton_of_ours_is_not_counted() {
        implanted("one", TODAY.minusDays(3), DeviceUseStatementStatus.ACTIVE);
        implanted("one", TODAY.minusDays(3), DeviceUseStatementStatus.COMPLETED);
        implanted("other", TODAY.minusDays(3), DeviceUseStatementStatus.ENTEREDINERROR);
        DeviceUseStatement pump = new DeviceUseStatement().setDevice(new Reference("Device/pump"));
        pump.setTiming(new DateTimeType(TODAY.toString())).setId("pump");
        bundle.addEntry().setResource(pump);
        assertThat(demand(NORTH)).containsExactly(new Demand(HOUSE, 1, Days.of(90), 0));
        assertThat(demand(SOUTH)).isEmpty();
    }

    @Test
    void what_is_on_order_for_the_site_counts_until_it_is_closed() {
        LensKind toric = new LensKind("DeviceDefinition/toric", Dioptres.of(20), Optional.of(Dioptres.of(2.25)));
        ordered(HOUSE, 2, NORTH);
        ordered(HOUSE, 1, NORTH);
        ordered(HOUSE, 5, SOUTH);
        ordered(HOUSE, 7, NORTH).setStatus(SupplyRequestStatus.COMPLETED);
        ordered(HOUSE, 7, NORTH).setStatus(SupplyRequestStatus.CANCELLED);
        ordered(toric, 1, NORTH);
        assertThat(demand(NORTH))
                .containsExactly(new Demand(HOUSE, 0, Days.of(90), 3), new Demand(toric, 0, Days.of(90), 1));
        assertThat(new Use(new Shelf(bundle), new Sites(new Shelf(bundle))).orderedFor())
                .containsOnly(NORTH, SOUTH);
    }

    @Test
    void a_supply_request_of_something_else_is_none_of_ours() {
        ordered(HOUSE, 1, NORTH).getExtension().clear();
        ordered(HOUSE, 1, NORTH).getParameter().clear();
        ordered(HOUSE, 1, NORTH).setQuantity(new Quantity());
        ordered(HOUSE, 1, "a ward").setDeliverTo(null);
        assertThat(demand(NORTH)).containsExactly(new Demand(HOUSE, 0, Days.of(90), 0));
    }
}
