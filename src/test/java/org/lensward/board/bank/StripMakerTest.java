package org.lensward.board.bank;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.junit.jupiter.api.Test;
import org.lensward.finding.Evidence;
import org.lensward.flow.PolicyFile;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Owner;
import org.lensward.lens.stock.ParLevel;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;
import org.lensward.record.Shelf;
import org.lensward.record.stock.Sites;
import org.lensward.record.stock.StockSheet.SiteLevels;

/** Counted by hand: what a cell says of five cartons of one power. */
class StripMakerTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    private static final LocalDate LATER = TODAY.plusYears(2);
    private static final LensKind KIND =
            new LensKind("DeviceDefinition/harbour-60", Dioptres.of(21.5), Optional.empty());
    private static final Shelf SHELF = new Shelf(new Bundle());

    private static final List<LensUnit> FIVE = List.of(
            unit(1, "store", UnitState.AVAILABLE, LATER),
            unit(2, "store", UnitState.AVAILABLE, TODAY.plusDays(1)),
            unit(3, "north", UnitState.AVAILABLE, LATER),
            unit(4, "store", UnitState.RESERVED, LATER),
            unit(5, "store", UnitState.QUARANTINED, LATER));

    private static LensUnit unit(int number, String store, UnitState state, LocalDate expiry) {
        return new LensUnit(
                new Evidence("Device/unit-" + number, "1", ""),
                KIND.model(),
                KIND.power(),
                KIND.cylinder(),
                new LensUnit.Identity("09521234000013", Optional.of("L7"), Optional.of("S" + number), expiry),
                "Location/" + store,
                new Owner("Organization/hospital", false),
                state,
                state == UnitState.RESERVED ? Optional.of("ServiceRequest/b1") : Optional.empty());
    }

    private static HeatStrip.Cell cell(int par, Optional<String> site) {
        SiteLevels levels = new SiteLevels("Location/store", List.of(new ParLevel(KIND, 1, 0, PureNumber.of(1), par)));
        HeatStrip strip = new StripMaker(
                        new Names(SHELF), new Sites(SHELF), PolicyFile.shipped().stock(), TODAY)
                .strip(FIVE, List.of(levels), site);
        assertThat(strip.powers()).containsExactly("+21.50 D");
        return strip.rows().get(0).cells().get(0).orElseThrow();
    }

    @Test
    void a_cell_counts_what_is_free_promised_soon_out_of_date_and_kept_apart() {
        assertThat(cell(1, Optional.empty()).words())
                .isEqualTo("+21.50 D: 3 free, 1 reserved, 1 going out of date, 1 in quarantine");
    }

    @Test
    void a_carton_that_expires_before_a_new_one_could_come_does_not_count_towards_par() {
        assertThat(cell(1, Optional.empty()).isBelow()).isFalse();
        assertThat(cell(2, Optional.empty()).isBelow()).isTrue();
    }

    @Test
    void of_one_site_only_its_own_cartons_are_counted() {
        assertThat(cell(1, Optional.of("Location/north")).words()).isEqualTo("+21.50 D: 1 free");
        assertThat(cell(1, Optional.of("Location/store")).count()).isEqualTo(2);
    }

    @Test
    void the_address_of_a_cell_leads_back_to_its_kind() {
        assertThat(new KindAddress("harbour-60", "21.50", "").kind()).isEqualTo(KIND);
        assertThat(KindAddress.of(KIND).path()).isEqualTo("/bank/kind?model=harbour-60&power=21.50");
    }
}
