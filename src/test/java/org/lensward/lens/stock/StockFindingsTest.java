package org.lensward.lens.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.lens.KitRole.PRIMARY;
import static org.lensward.lens.KitRole.SULCUS;
import static org.lensward.lens.stock.Stocks.SOUTH;
import static org.lensward.lens.stock.Stocks.TODAY;
import static org.lensward.lens.stock.Stocks.held;
import static org.lensward.lens.stock.Stocks.need;
import static org.lensward.lens.stock.Stocks.ofPower;
import static org.lensward.lens.stock.Stocks.unit;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

class StockFindingsTest {

    private static final Evidence BOOKING = new Evidence("ServiceRequest/a", "3", "");
    private static final LensNeed PRIMARY_LENS = need(BOOKING.resource(), PRIMARY, 1);

    @Test
    void a_shortage_and_an_order_that_comes_too_late() {
        assertThat(findings(List.of(PRIMARY_LENS)))
                .extracting(Finding::message)
                .containsExactly(
                        "The primary lens, DeviceDefinition/house +21.50 D, for 2026-12-01 is not to be had from stock:"
                                + " no carton of this kind is held.",
                        "DeviceDefinition/house +21.50 D, needed on 2026-12-01, should have been ordered by 2026-11-24.");
    }

    @Test
    void an_order_in_time_needs_no_finding_of_its_own() {
        assertThat(codes(List.of(need(BOOKING.resource(), PRIMARY, 9)))).containsExactly(FindingCode.LENS_NOT_IN_STOCK);
    }

    @Test
    void a_transfer_with_the_carton_as_evidence() {
        assertThat(findings(List.of(PRIMARY_LENS), unit("x", 90, SOUTH)))
                .singleElement()
                .satisfies(finding -> {
                    assertThat(finding.code()).isEqualTo(FindingCode.LENS_TO_BE_FETCHED);
                    assertThat(finding.evidence()).containsExactly(unit("x", 90).evidence(), BOOKING);
                    assertThat(finding.message())
                            .isEqualTo("The primary lens lies at Location/south and is needed at Location/north"
                                    + " on 2026-12-01.");
                });
    }

    @Test
    void a_shared_back_up() {
        assertThat(findings(
                        List.of(need(BOOKING.resource(), SULCUS, 1), need("ServiceRequest/b", SULCUS, 1)),
                        unit("x", 90)))
                .extracting(Finding::message)
                .containsExactly("One sulcus lens stands by for 2 operations of the day.");
    }

    @Test
    void a_carton_held_in_vain() {
        assertThat(codes(
                        List.of(PRIMARY_LENS),
                        unit("x", 90),
                        ofPower(held("o", 90, UnitState.RESERVED, BOOKING.resource()), 20)))
                .containsExactly(FindingCode.LENS_HELD_UNUSED);
    }

    @Test
    void nothing_of_what_concerns_others() {
        LensNeed other = need("ServiceRequest/b", PRIMARY, 1);
        LensUnit vain = ofPower(held("o", 90, UnitState.RESERVED, other.booking()), 20);
        LensNeed fetched = ofPower(need("ServiceRequest/c", PRIMARY, 1), 20);
        assertThat(codes(List.of(PRIMARY_LENS, other, fetched), unit("x", 90), vain, ofPower(unit("y", 90, SOUTH), 20)))
                .isEmpty();
    }

    private static List<FindingCode> codes(List<LensNeed> needs, LensUnit... units) {
        return findings(needs, units).stream().map(Finding::code).toList();
    }

    private static List<Finding> findings(List<LensNeed> needs, LensUnit... units) {
        return StockCheck.allocate(needs, List.of(units), Stocks.policy(), TODAY)
                .findings(BOOKING);
    }
}
