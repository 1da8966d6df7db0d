package org.lensward.lens.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.lensward.lens.KitRole.ANTERIOR_CHAMBER;
import static org.lensward.lens.KitRole.PRIMARY;
import static org.lensward.lens.KitRole.SPARE;
import static org.lensward.lens.KitRole.SULCUS;
import static org.lensward.lens.stock.Stocks.EAST;
import static org.lensward.lens.stock.Stocks.NORTH;
import static org.lensward.lens.stock.Stocks.SOUTH;
import static org.lensward.lens.stock.Stocks.TODAY;
import static org.lensward.lens.stock.Stocks.held;
import static org.lensward.lens.stock.Stocks.need;
import static org.lensward.lens.stock.Stocks.unit;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.quantity.Dioptres;

/** Source: common practice as the reference of the house has it: first-expiry-first-out, nothing expired on the day, no promise broken. */
class StockCheckTest {

    private static final LensNeed ADA = need("ServiceRequest/a", PRIMARY, 1);
    private static final LensNeed BEN = need("ServiceRequest/b", PRIMARY, 2);
    private static final LensNeed CAT = need("ServiceRequest/c", PRIMARY, 3);

    @Nested
    class First_expiry_first_out {

        @Test
        void the_carton_that_expires_first_goes_to_the_first_operation() {
            Allocation allocation = check(List.of(BEN, ADA), unit("late", 90), unit("soon", 20), unit("later", 99));
            assertThat(allocation.unitFor(ADA)).contains(unit("soon", 20));
            assertThat(allocation.unitFor(BEN)).contains(unit("late", 90));
            assertThat(allocation.free().units()).containsExactly(unit("later", 99));
        }

        @Test
        void the_last_day_of_use_counts() {
            assertThat(check(List.of(ADA), unit("just", 1)).unitFor(ADA)).isPresent();
        }

        @Test
        void a_carton_one_day_over_is_left() {
            Allocation allocation = check(List.of(ADA), unit("over", 0));
            assertThat(allocation.shortages()).containsExactly(new Shortage(ADA, ShortageReason.EXPIRED_BY_THE_DAY));
        }

        @Test
        void cartons_alike_go_by_name() {
            Allocation allocation = check(List.of(ADA), unit("b", 20), unit("a", 20));
            assertThat(allocation.unitFor(ADA)).contains(unit("a", 20));
        }

        /** The carton good for one day only must not be lost to whoever could use the other. */
        @Test
        void nobody_goes_short_for_its_sake() {
            Allocation allocation = check(List.of(ADA, CAT), unit("short", 2), unit("long", 3));
            assertThat(allocation.shortages()).isEmpty();
        }
    }

    @Nested
    class Where_there_is_not_enough {

        @Test
        void the_earlier_day_is_served() {
            Allocation allocation = check(List.of(CAT, ADA, BEN), unit("x", 90), unit("y", 90));
            assertThat(allocation.shortages()).containsExactly(new Shortage(CAT, ShortageReason.ALL_PROMISED));
        }

        /** The primary's own carton is not why the spare is short. */
        @Test
        void a_spare_is_short_for_what_is_wrong_with_the_other_cartons() {
            LensNeed spare = need("ServiceRequest/a", SPARE, 1);
            assertThat(check(List.of(spare, ADA), unit("x", 90)).shortages())
                    .containsExactly(new Shortage(spare, ShortageReason.NO_FURTHER_ONE));
            assertThat(check(List.of(spare, ADA), unit("x", 90), unit("over", 0))
                            .shortages())
                    .containsExactly(new Shortage(spare, ShortageReason.EXPIRED_BY_THE_DAY));
        }

        @Test
        void a_primary_lens_of_a_later_day_comes_before_a_spare() {
            LensNeed spare = need("ServiceRequest/a", SPARE, 1);
            Allocation allocation = check(List.of(spare, CAT, ADA), unit("x", 90), unit("y", 90));
            assertThat(allocation.shortages()).extracting(Shortage::need).containsExactly(spare);
        }

        @Test
        void the_order_says_how_many_for_whom_and_by_when() {
            LensNeed far = need("ServiceRequest/d", PRIMARY, 8);
            LensNeed spare = need("ServiceRequest/d", SPARE, 8);
            Allocation allocation = check(List.of(far, spare, ADA));
            assertThat(allocation.orders())
                    .containsExactly(
                            new Order(
                                    LensKind.of(ADA),
                                    1,
                                    NORTH,
                                    TODAY.plusDays(1),
                                    TODAY.minusDays(6),
                                    List.of("ServiceRequest/a"),
                                    true),
                            new Order(
                                    LensKind.of(far),
                                    2,
                                    NORTH,
                                    TODAY.plusDays(8),
                                    TODAY.plusDays(1),
                                    List.of("ServiceRequest/d"),
                                    false));
        }

        @Test
        void an_order_due_today_is_not_late() {
            assertThat(check(List.of(need("ServiceRequest/a", PRIMARY, 7))).orders())
                    .extracting(Order::late)
                    .containsExactly(false);
        }

        @Test
        void cartons_of_another_power_model_or_cylinder_do_not_help() {
            LensUnit toric = new LensUnit(
                    unit("t", 90).evidence(),
                    ADA.model(),
                    ADA.power(),
                    Optional.of(Dioptres.of(1.5)),
                    unit("t", 90).identity(),
                    NORTH,
                    unit("t", 90).owner(),
                    UnitState.AVAILABLE,
                    Optional.empty());
            Allocation allocation = check(List.of(ADA), toric, Stocks.ofPower(unit("minus", 90), -21.5));
            assertThat(allocation.shortages()).containsExactly(new Shortage(ADA, ShortageReason.NONE_HELD));
        }

        @Test
        void a_quarantined_wasted_or_implanted_carton_does_not_help() {
            LensUnit quarantined = unit("q", 90, NORTH, UnitState.QUARANTINED, Optional.empty());
            assertThat(check(List.of(ADA), quarantined).shortages())
                    .containsExactly(new Shortage(ADA, ShortageReason.ALL_QUARANTINED));
            assertThat(check(
                                    List.of(ADA),
                                    unit("w", 90, NORTH, UnitState.WASTED, Optional.empty()),
                                    held("i", 90, UnitState.IMPLANTED, ADA.booking()))
                            .shortages())
                    .containsExactly(new Shortage(ADA, ShortageReason.NONE_HELD));
        }

        @Test
        void an_operation_whose_day_is_past_gets_and_orders_nothing() {
            LensNeed past = need("ServiceRequest/p", PRIMARY, -1);
            Allocation allocation = check(List.of(past), unit("x", 90));
            assertThat(allocation.shortages()).containsExactly(new Shortage(past, ShortageReason.DAY_PAST));
            assertThat(allocation.orders()).isEmpty();
        }
    }

    @Nested
    class Between_sites {

        @Test
        void a_carton_at_the_site_comes_before_one_that_expires_sooner_elsewhere() {
            Allocation allocation = check(List.of(CAT), unit("here", 90), unit("there", 10, SOUTH));
            assertThat(allocation.unitFor(CAT)).contains(unit("here", 90));
        }

        @Test
        void the_nearest_site_sends() {
            Allocation allocation = check(List.of(CAT), unit("far", 10, EAST), unit("near", 90, SOUTH));
            assertThat(allocation.assignments()).singleElement().satisfies(assignment -> {
                assertThat(assignment.unit()).isEqualTo(unit("near", 90, SOUTH));
                assertThat(assignment.transfer()).contains(Stocks.way(SOUTH, NORTH, 1, 12));
            });
        }

        @Test
        void what_cannot_arrive_by_the_day_is_not_sent() {
            assertThat(check(List.of(ADA), unit("far", 90, EAST)).shortages())
                    .containsExactly(new Shortage(ADA, ShortageReason.TOO_FAR));
            assertThat(check(List.of(BEN), unit("far", 90, EAST)).shortages()).isEmpty();
        }

        @Test
        void no_road_is_no_way() {
            LensNeed south = need("ServiceRequest/s", PRIMARY, 9, SOUTH);
            assertThat(check(List.of(south), unit("east", 90, EAST)).shortages())
                    .containsExactly(new Shortage(south, ShortageReason.TOO_FAR));
        }
    }

    @Nested
    class A_back_up {

        private final LensNeed one = need("ServiceRequest/a", SULCUS, 1);
        private final LensNeed two = need("ServiceRequest/b", SULCUS, 1);
        private final LensNeed three = need("ServiceRequest/c", SULCUS, 1);

        @Test
        void stands_by_for_as_many_as_the_policy_allows() {
            Allocation allocation = check(List.of(one, two, three), unit("x", 10), unit("y", 20));
            assertThat(allocation.assignments())
                    .extracting(Assignment::needs)
                    .containsExactly(List.of(one, two), List.of(three));
            assertThat(allocation.assignments())
                    .extracting(Assignment::isShared)
                    .containsExactly(true, false);
        }

        @Test
        void is_given_to_two_rather_than_one_where_there_is_one_only() {
            Allocation allocation = check(List.of(one, two, three), unit("x", 10));
            assertThat(allocation.shortages()).extracting(Shortage::need).containsExactly(three);
            assertThat(allocation.orders()).extracting(Order::count).containsExactly(1);
        }

        @Test
        void is_not_shared_between_days_sites_or_roles() {
            List<LensNeed> apart = List.of(
                    one,
                    need("ServiceRequest/b", SULCUS, 2),
                    need("ServiceRequest/c", SULCUS, 1, SOUTH),
                    need("ServiceRequest/d", ANTERIOR_CHAMBER, 1));
            Allocation allocation =
                    check(apart, unit("v", 90), unit("w", 90), unit("x", 90), unit("y", 90, SOUTH), unit("z", 90));
            assertThat(allocation.assignments()).hasSize(4).noneMatch(Assignment::isShared);
        }

        @Test
        void is_not_shared_unless_the_policy_says_so() {
            Allocation allocation =
                    StockCheck.allocate(List.of(one, two), List.of(unit("x", 10)), Stocks.policy(Map.of()), TODAY);
            assertThat(allocation.shortages()).extracting(Shortage::need).containsExactly(two);
        }

        @Test
        void promised_to_one_stands_by_for_another() {
            LensUnit promised = held("x", 10, UnitState.RESERVED, two.booking());
            Allocation allocation = check(List.of(one, two, three), promised);
            assertThat(allocation.assignments()).extracting(Assignment::needs).containsExactly(List.of(two, one));
            assertThat(allocation.shortages()).extracting(Shortage::need).containsExactly(three);
        }
    }

    @Nested
    class A_promise {

        @Test
        void is_kept_though_another_carton_expires_sooner() {
            LensUnit promised = held("p", 90, UnitState.RESERVED, BEN.booking());
            Allocation allocation = check(List.of(ADA, BEN), promised, unit("soon", 10));
            assertThat(allocation.unitFor(BEN)).contains(promised);
            assertThat(allocation.unitFor(ADA)).contains(unit("soon", 10));
        }

        @Test
        void to_somebody_else_leaves_one_short() {
            Allocation allocation = check(List.of(ADA), held("p", 90, UnitState.PICKED, "ServiceRequest/other"));
            assertThat(allocation.shortages()).containsExactly(new Shortage(ADA, ShortageReason.ALL_PROMISED));
            assertThat(allocation.heldInVain()).isEmpty();
        }

        @Test
        void of_two_cartons_gives_the_picked_one_to_the_eye_and_the_other_to_spare() {
            LensNeed spare = need(ADA.booking(), SPARE, 1);
            LensUnit reserved = held("r", 10, UnitState.RESERVED, ADA.booking());
            LensUnit picked = held("p", 90, UnitState.PICKED, ADA.booking());
            Allocation allocation = check(List.of(spare, ADA), reserved, picked);
            assertThat(allocation.unitFor(ADA)).contains(picked);
            assertThat(allocation.unitFor(spare)).contains(reserved);
        }

        @Test
        void that_is_out_of_date_by_the_day_is_in_vain() {
            LensUnit stale = held("s", 0, UnitState.RESERVED, ADA.booking());
            Allocation allocation = check(List.of(ADA), stale, unit("x", 90));
            assertThat(allocation.unitFor(ADA)).contains(unit("x", 90));
            assertThat(allocation.heldInVain()).containsExactly(stale);
        }

        @Test
        void of_a_power_no_longer_planned_is_in_vain_and_serves_nobody() {
            LensUnit old = Stocks.ofPower(held("o", 90, UnitState.RESERVED, ADA.booking()), 20);
            LensNeed other = Stocks.ofPower(BEN, 20);
            Allocation allocation = check(List.of(ADA, other), old, unit("x", 90));
            assertThat(allocation.heldInVain()).containsExactly(old);
            assertThat(allocation.shortages()).containsExactly(new Shortage(other, ShortageReason.ALL_PROMISED));
        }

        @Test
        void fulfilled_in_the_eye_is_not_in_vain() {
            assertThat(check(List.of(ADA), held("i", 90, UnitState.IMPLANTED, ADA.booking()))
                            .heldInVain())
                    .isEmpty();
        }
    }

    @Test
    void minus_nought_is_nought() {
        LensNeed nought = Stocks.ofPower(ADA, 0.0);
        assertThat(check(List.of(nought), Stocks.ofPower(unit("x", 9), -0.0)).unitFor(nought))
                .isPresent();
    }

    @Test
    void the_same_carton_or_need_listed_twice_is_refused() {
        assertThatIllegalArgumentException().isThrownBy(() -> check(List.of(), unit("x", 9), unit("x", 10)));
        assertThatIllegalArgumentException().isThrownBy(() -> check(List.of(ADA, ADA)));
    }

    @Test
    void a_carton_is_assigned_to_somebody() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Assignment(unit("x", 9), List.of(), Optional.empty()));
    }

    private static Allocation check(List<LensNeed> needs, LensUnit... units) {
        return StockCheck.allocate(needs, List.of(units), Stocks.policy(), TODAY);
    }
}
