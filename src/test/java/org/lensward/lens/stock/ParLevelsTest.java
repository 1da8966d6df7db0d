package org.lensward.lens.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.lens.stock.Stocks.NORTH;
import static org.lensward.lens.stock.Stocks.TODAY;
import static org.lensward.lens.stock.Stocks.held;
import static org.lensward.lens.stock.Stocks.unit;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.quantity.Days;
import org.lensward.quantity.Dioptres;

class ParLevelsTest {

    private static final LensKind KIND = LensKind.of(unit("any", 1));
    private static final ParLevels LEVELS = new ParLevels(Stocks.policy());

    @Nested
    class Par {

        /** Worked by hand from D + 1.645 sqrt(D): used in 70 days, so a tenth in the lead time of seven. */
        @ParameterizedTest
        @CsvSource({
            "0, 0, 0",
            "10, 1, 3", // 2.645
            "40, 4, 8", // 7.29
            "90, 9, 14", // 13.935
            "160, 16, 23", // 22.58
            "250, 25, 34" // 33.225
        })
        void is_mean_demand_and_a_margin_rounded_up(int used, double mean, int par) {
            ParLevel level = level(used, 70, 0);
            assertThat(level.expected().value()).isCloseTo(mean, within(1e-12));
            assertThat(level.par()).isEqualTo(par);
        }

        /** The exact Poisson distribution by Apache Commons Math: the approximation comes within 2 % of the 95 % aimed at. */
        @ParameterizedTest
        @ValueSource(ints = {1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144})
        void lasts_the_lead_time_about_as_often_as_the_policy_wants(int mean) {
            int par = level(mean * 10, 70, 0).par();
            assertThat(new PoissonDistribution(mean).cumulativeProbability(par)).isGreaterThan(0.93);
            assertThat(new PoissonDistribution(mean).cumulativeProbability(par - 2))
                    .isLessThan(0.95);
        }

        /** Once in 90 days: 0.078 in the lead time, computed 1. */
        @Test
        void is_two_at_least_for_a_common_power() {
            assertThat(level(4, 360, 0).par()).isEqualTo(2);
            assertThat(level(3, 360, 0).par()).isEqualTo(1);
        }

        @Test
        void is_nought_for_what_is_never_used() {
            assertThat(level(0, 360, 0).par()).isZero();
            assertThat(level(0, 360, 0).suggestedOrder()).isZero();
        }
    }

    @Nested
    class The_suggested_order {

        @Test
        void comes_back_to_par() {
            ParLevel level = level(40, 70, 3, unit("x", 90), unit("y", 90));
            assertThat(level.onHand()).isEqualTo(2);
            assertThat(level.onOrder()).isEqualTo(3);
            assertThat(level.suggestedOrder()).isEqualTo(3);
        }

        @Test
        void counts_only_free_cartons_in_date_when_the_delivery_comes() {
            ParLevel level = level(
                    40,
                    70,
                    0,
                    unit("just", 7),
                    unit("over", 6),
                    held("r", 90, UnitState.RESERVED, "ServiceRequest/a"),
                    Stocks.ofPower(unit("other", 90), 22));
            assertThat(level.onHand()).isEqualTo(1);
        }

        @Test
        void is_nought_where_there_is_enough() {
            assertThat(level(1, 360, 5).suggestedOrder()).isZero();
        }
    }

    @Test
    void levels_stand_in_order_of_kind() {
        Demand twenty = demand(KIND.withPower(Dioptres.of(20)));
        Demand toric = demand(new LensKind(KIND.model(), KIND.power(), Optional.of(Dioptres.of(1.5))));
        assertThat(LEVELS.of(List.of(toric, demand(KIND), twenty), List.of(), TODAY))
                .extracting(level -> level.kind().toString())
                .containsExactly(
                        "DeviceDefinition/house +20.00 D",
                        "DeviceDefinition/house +21.50 D",
                        "DeviceDefinition/house +21.50 D cylinder 1.50 D");
    }

    @Test
    void what_soon_expires_is_listed_first_to_expire_first() {
        LensUnit gone = unit("gone", -3);
        LensUnit last = unit("last", 90);
        LensUnit promised = held("promised", 30, UnitState.RESERVED, "ServiceRequest/a");
        assertThat(LEVELS.expiringSoon(
                        List.of(
                                last,
                                unit("good", 91),
                                promised,
                                gone,
                                unit("out", 5, NORTH, UnitState.WASTED, Optional.empty())),
                        TODAY))
                .containsExactly(gone, promised, last);
    }

    @Test
    void a_demand_is_counted_over_some_time() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Demand(KIND, -1, Days.of(1), 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new Demand(KIND, 1, Days.of(0), 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new Demand(KIND, 1, Days.of(1), -1));
    }

    private static Demand demand(LensKind kind) {
        return new Demand(kind, 1, Days.of(90), 0);
    }

    private static ParLevel level(int used, int over, int onOrder, LensUnit... units) {
        return LEVELS.of(List.of(new Demand(KIND, used, Days.of(over), onOrder)), List.of(units), TODAY)
                .get(0);
    }
}
