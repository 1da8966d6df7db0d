package org.lensward.lens.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.lensward.eye.Policies.limit;
import static org.lensward.lens.stock.Stocks.NORTH;
import static org.lensward.lens.stock.Stocks.SOUTH;
import static org.lensward.lens.stock.Stocks.way;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.eye.Limit;
import org.lensward.lens.KitRole;
import org.lensward.quantity.Days;
import org.lensward.quantity.PureNumber;

class StockPolicyTest {

    private static final String COMMON = "common practice, no source";

    @Test
    void a_row_holds_both_ways_unless_the_way_back_has_its_own() {
        StockPolicy both = policy(Map.of(), List.of(way(NORTH, SOUTH, 1, 12)));
        assertThat(both.transfer(SOUTH, NORTH)).contains(way(SOUTH, NORTH, 1, 12));
        StockPolicy own = policy(Map.of(), List.of(way(NORTH, SOUTH, 1, 12), way(SOUTH, NORTH, 2, 15)));
        assertThat(own.transfer(SOUTH, NORTH)).contains(way(SOUTH, NORTH, 2, 15));
        assertThat(own.transfer(NORTH, SOUTH)).contains(way(NORTH, SOUTH, 1, 12));
        assertThat(own.transfer(NORTH, "Location/moon")).isEmpty();
    }

    @Test
    void the_primary_lens_is_never_shared() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> policy(Map.of(KitRole.PRIMARY, limit(PureNumber.of(2), COMMON)), List.of()));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1.5, -2})
    void a_carton_stands_by_for_a_whole_number_of_operations(double operations) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> policy(Map.of(KitRole.SULCUS, limit(PureNumber.of(operations), COMMON)), List.of()));
    }

    @ParameterizedTest
    @CsvSource({"-0.1, 2, 90", "1.6, -1, 90", "1.6, 1.5, 90", "1.6, 2, 0"})
    void margins_make_sense(double safety, double floor, int common) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new StockPolicy(
                        limit(Days.of(7), COMMON),
                        limit(PureNumber.of(safety), COMMON),
                        limit(PureNumber.of(floor), COMMON),
                        limit(Days.of(common), COMMON),
                        limit(Days.of(90), COMMON),
                        Map.of(),
                        List.of()));
    }

    @Test
    void a_transfer_leads_somewhere_else_and_not_round_the_world() {
        assertThatIllegalArgumentException().isThrownBy(() -> way(NORTH, NORTH, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> way(NORTH, SOUTH, 1, 10_001));
    }

    private static StockPolicy policy(Map<KitRole, Limit<PureNumber>> shared, List<Transfer> transfers) {
        return new StockPolicy(
                limit(Days.of(7), COMMON),
                limit(PureNumber.of(1.645), COMMON),
                limit(PureNumber.of(2), COMMON),
                limit(Days.of(90), COMMON),
                limit(Days.of(90), COMMON),
                shared,
                transfers);
    }
}
