package org.lensward.lens.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.lens.KitRole.PRIMARY;
import static org.lensward.lens.KitRole.SPARE;
import static org.lensward.lens.stock.Stocks.SOUTH;
import static org.lensward.lens.stock.Stocks.TODAY;
import static org.lensward.lens.stock.Stocks.need;
import static org.lensward.lens.stock.Stocks.ofPower;
import static org.lensward.lens.stock.Stocks.unit;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lensward.quantity.Dioptres;

/** Source: common practice, no source: the neighbouring power is the fall-back, and the surgeon decides. */
class OffersTest {

    private static final LensNeed NEED = need("ServiceRequest/a", PRIMARY, 1);
    private static final Alternative WEAKER = new Alternative(Dioptres.of(21), Dioptres.of(0.1));
    private static final Alternative STRONGER = new Alternative(Dioptres.of(22), Dioptres.of(-0.6));
    private static final Alternative FAR = new Alternative(Dioptres.of(23), Dioptres.of(-1.3));
    private static final Alternative SAME = new Alternative(Dioptres.of(21.5), Dioptres.of(-0.25));

    @Test
    void of_two_equally_near_the_one_that_leaves_myopia() {
        assertThat(offers(List.of(NEED), ofPower(unit("w", 90), 21), ofPower(unit("s", 90), 22)))
                .containsExactly(new Offer(NEED, STRONGER, ofPower(unit("s", 90), 22)));
    }

    @Test
    void the_nearest_in_stock() {
        assertThat(offers(List.of(NEED), ofPower(unit("w", 90), 21), ofPower(unit("f", 90), 23)))
                .extracting(Offer::alternative)
                .containsExactly(WEAKER);
    }

    @Test
    void nothing_that_is_promised_expired_too_far_or_not_planned() {
        LensUnit promised = unit("p", 90, Stocks.NORTH, UnitState.RESERVED, Optional.of("ServiceRequest/other"));
        assertThat(offers(
                        List.of(NEED),
                        ofPower(promised, 22),
                        ofPower(unit("e", 0), 22),
                        ofPower(unit("t", 90, Stocks.EAST), 22),
                        ofPower(unit("n", 90), 25)))
                .isEmpty();
    }

    @Test
    void a_carton_at_the_site_before_one_that_expires_sooner_elsewhere() {
        assertThat(offers(List.of(NEED), ofPower(unit("t", 9, SOUTH), 22), ofPower(unit("h", 90), 22)))
                .extracting(Offer::unit)
                .containsExactly(ofPower(unit("h", 90), 22));
    }

    @Test
    void no_carton_is_offered_twice_and_the_primary_lens_comes_first() {
        LensNeed spare = need("ServiceRequest/a", SPARE, 1);
        assertThat(offers(List.of(spare, NEED), ofPower(unit("s", 90), 22)))
                .containsExactly(new Offer(NEED, STRONGER, ofPower(unit("s", 90), 22)));
    }

    @Test
    void nothing_for_a_day_that_is_past() {
        assertThat(offers(List.of(need("ServiceRequest/a", PRIMARY, -1)), ofPower(unit("s", 90), 22)))
                .isEmpty();
    }

    /** Two are short of the one power and one carton of it is promised to a third: the power that is short is no alternative to itself. */
    @Test
    void not_the_power_that_is_short() {
        LensNeed other = need("ServiceRequest/b", PRIMARY, 1, SOUTH);
        Allocation allocation = check(List.of(NEED, other), unit("t", 90, SOUTH));
        assertThat(allocation
                        .free()
                        .offers(List.of(new Shortage(NEED, ShortageReason.ALL_PROMISED)), any -> List.of(SAME)))
                .isEmpty();
        FreeStock left = check(List.of(), unit("x", 90)).free();
        assertThat(left.offers(List.of(new Shortage(NEED, ShortageReason.ALL_PROMISED)), any -> List.of(SAME)))
                .isEmpty();
    }

    private static List<Offer> offers(List<LensNeed> needs, LensUnit... units) {
        Allocation allocation = check(needs, units);
        return allocation.free().offers(allocation.shortages(), any -> List.of(FAR, SAME, WEAKER, STRONGER));
    }

    private static Allocation check(List<LensNeed> needs, LensUnit... units) {
        return StockCheck.allocate(needs, List.of(units), Stocks.policy(), TODAY);
    }
}
