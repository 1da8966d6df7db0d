package org.lensward.lens.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.lens.stock.Stocks.EAST;
import static org.lensward.lens.stock.Stocks.NORTH;
import static org.lensward.lens.stock.Stocks.SOUTH;
import static org.lensward.lens.stock.Stocks.TODAY;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.lensward.lens.KitRole;

/** What holds of every allocation, and that none is better. Source: the words of {@link StockCheck}, tried out case by case. */
class StockCheckLaws {

    private static final StockPolicy POLICY = Stocks.policy();

    /** Needs and cartons of one week. */
    record Week(List<LensNeed> needs, List<LensUnit> units) {

        Allocation allocate() {
            return StockCheck.allocate(needs, units, POLICY, TODAY);
        }
    }

    @Property(tries = 3000, edgeCases = EdgeCasesMode.NONE)
    void no_allocation_is_better(@ForAll("smallWeeks") Week week) {
        Merit found = Merit.of(given(week.allocate()), week.needs(), week.units(), POLICY);
        assertThat(found).isEqualTo(EveryAllocation.best(week.needs(), week.units(), POLICY));
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void every_need_is_covered_or_short(@ForAll("weeks") Week week) {
        Allocation allocation = week.allocate();
        assertThat(Stream.concat(
                        allocation.assignments().stream().flatMap(each -> each.needs().stream()),
                        allocation.shortages().stream().map(Shortage::need)))
                .containsExactlyInAnyOrderElementsOf(week.needs());
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void no_carton_is_in_two_places(@ForAll("weeks") Week week) {
        Allocation allocation = week.allocate();
        assertThat(allocation.assignments().stream().map(Assignment::unit)).doesNotHaveDuplicates();
        assertThat(allocation.assignments()).allSatisfy(each -> {
            KitRole role = each.needs().get(0).role();
            assertThat(each.needs()).hasSizeLessThanOrEqualTo(POLICY.operationsPerCarton(role));
            assertThat(each.needs()).allSatisfy(need -> {
                assertThat(need.role()).isEqualTo(role);
                assertThat(need.day()).isEqualTo(each.needs().get(0).day());
                assertThat(need.location()).isEqualTo(each.needs().get(0).location());
            });
        });
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void a_carton_is_the_lens_needed_in_date_usable_and_there_in_time(@ForAll("weeks") Week week) {
        assertThat(week.allocate().assignments())
                .allSatisfy(each -> assertThat(each.needs()).allSatisfy(need -> {
                    assertThat(LensKind.of(each.unit())).isEqualTo(LensKind.of(need));
                    assertThat(each.unit().identity().expiry()).isAfterOrEqualTo(need.day());
                    assertThat(each.unit().state()).isIn(UnitState.AVAILABLE, UnitState.RESERVED, UnitState.PICKED);
                    if (each.unit().location().equals(need.location())) {
                        assertThat(each.transfer()).isEmpty();
                    } else {
                        Transfer way = each.transfer().orElseThrow();
                        assertThat(way.from()).isEqualTo(each.unit().location());
                        assertThat(way.to()).isEqualTo(need.location());
                        assertThat(way.arrives(TODAY, need.day())).isTrue();
                    }
                }));
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void what_is_promised_goes_to_nobody_else(@ForAll("weeks") Week week) {
        assertThat(week.allocate().assignments())
                .filteredOn(each -> each.unit().heldFor().isPresent())
                .allSatisfy(each -> assertThat(each.needs().stream().map(LensNeed::booking))
                        .contains(each.unit().heldFor().orElseThrow()));
    }

    /** A promised carton that could serve its booking is idle only where others promised to the same booking serve it. */
    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void no_promise_is_broken(@ForAll("weeks") Week week) {
        Allocation allocation = week.allocate();
        Reach reach = new Reach(POLICY, TODAY);
        for (LensUnit idle : allocation.heldInVain()) {
            assertThat(week.needs())
                    .filteredOn(need -> idle.heldFor().equals(Optional.of(need.booking()))
                            && LensKind.of(need).equals(LensKind.of(idle))
                            && reach.serves(idle, need))
                    .allSatisfy(need -> assertThat(
                                    allocation.unitFor(need).orElseThrow().heldFor())
                            .isEqualTo(idle.heldFor()));
        }
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void one_carton_more_never_leaves_more_short(@ForAll("weeks") Week week, @ForAll("cartons") LensUnit more) {
        List<LensUnit> units =
                Stream.concat(week.units().stream(), Stream.of(more)).toList();
        assertThat(new Week(week.needs(), units).allocate().shortages())
                .hasSizeLessThanOrEqualTo(week.allocate().shortages().size());
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void the_order_of_the_input_decides_nothing(@ForAll("weeks") Week week, @ForAll Random dice) {
        List<LensNeed> needs = new ArrayList<>(week.needs());
        List<LensUnit> units = new ArrayList<>(week.units());
        Collections.shuffle(needs, dice);
        Collections.shuffle(units, dice);
        Allocation one = week.allocate();
        Allocation other = new Week(needs, units).allocate();
        assertThat(other.assignments()).isEqualTo(one.assignments());
        assertThat(other.shortages()).isEqualTo(one.shortages());
        assertThat(other.orders()).isEqualTo(one.orders());
        assertThat(other.heldInVain()).isEqualTo(one.heldInVain());
        assertThat(other.free().units()).isEqualTo(one.free().units());
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void no_free_carton_beside_the_one_used_expires_sooner(@ForAll("weeks") Week week) {
        Allocation allocation = week.allocate();
        for (Assignment each : allocation.assignments()) {
            if (each.unit().state() == UnitState.AVAILABLE) {
                assertThat(allocation.free().units())
                        .filteredOn(free -> LensKind.of(free).equals(LensKind.of(each.unit()))
                                && free.location().equals(each.unit().location())
                                && free.isInDateOn(each.needs().get(0).day()))
                        .allSatisfy(free -> assertThat(free.identity().expiry())
                                .isAfterOrEqualTo(each.unit().identity().expiry()));
            }
        }
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void a_spare_is_never_had_without_its_primary(@ForAll("weeks") Week week) {
        Map<LensNeed, LensUnit> given = given(week.allocate());
        assertThat(week.needs())
                .filteredOn(need -> need.role() == KitRole.SPARE && given.containsKey(need))
                .allSatisfy(spare -> assertThat(week.needs())
                        .filteredOn(need -> need.role() == KitRole.PRIMARY
                                && need.booking().equals(spare.booking())
                                && LensKind.of(need).equals(LensKind.of(spare)))
                        .allSatisfy(primary -> assertThat(given).containsKey(primary)));
    }

    @Property(tries = 1000, edgeCases = EdgeCasesMode.NONE)
    void what_is_short_is_ordered_for_whom_it_is_short(@ForAll("weeks") Week week) {
        Allocation allocation = week.allocate();
        assertThat(allocation.shortages()).allSatisfy(each -> assertThat(allocation.orders())
                .filteredOn(order -> order.kind().equals(LensKind.of(each.need()))
                        && order.neededBy().equals(each.need().day())
                        && order.location().equals(each.need().location()))
                .singleElement()
                .satisfies(order -> {
                    assertThat(order.bookings()).contains(each.need().booking());
                    assertThat(order.orderBy()).isEqualTo(order.neededBy().minusDays(7));
                    assertThat(order.late()).isEqualTo(order.orderBy().isBefore(TODAY));
                }));
    }

    private static Map<LensNeed, LensUnit> given(Allocation allocation) {
        Map<LensNeed, LensUnit> given = new HashMap<>();
        allocation.assignments().forEach(each -> each.needs().forEach(need -> given.put(need, each.unit())));
        return given;
    }

    /** One power, free cartons only, so few that everything can be tried. */
    @Provide
    Arbitrary<Week> smallWeeks() {
        Arbitrary<LensNeed> need = Combinators.combine(
                        Arbitraries.integers().between(1, 5),
                        roles(),
                        Arbitraries.integers().between(0, 3),
                        sites())
                .as((booking, role, inDays, site) -> Stocks.need("ServiceRequest/b" + booking, role, inDays, site));
        Arbitrary<List<LensUnit>> units = Combinators.combine(
                        Arbitraries.integers().between(0, 5), sites())
                .as((goodFor, site) -> Stocks.unit("u", goodFor, site))
                .list()
                .ofMaxSize(4)
                .map(StockCheckLaws::named);
        return Combinators.combine(need.list().uniqueElements().ofMaxSize(5), units)
                .as(Week::new);
    }

    /** Two powers, cartons in every state, kits whose lenses are needed on one day at one site. */
    @Provide
    Arbitrary<Week> weeks() {
        Arbitrary<List<LensNeed>> kit = Combinators.combine(
                        Arbitraries.integers().between(0, 9),
                        sites(),
                        powers(),
                        powers(),
                        Arbitraries.subsetOf(KitRole.values()))
                .as((inDays, site, power, backUp, roles) -> roles.stream()
                        .sorted()
                        .map(role -> Stocks.ofPower(
                                Stocks.need("", role, inDays, site),
                                role.compareTo(KitRole.SPARE) > 0 ? backUp : power))
                        .toList());
        Arbitrary<List<LensNeed>> needs = kit.list().ofMaxSize(8).map(kits -> IntStream.range(0, kits.size())
                .boxed()
                .flatMap(index -> kits.get(index).stream().map(need -> booked(need, index)))
                .toList());
        return Combinators.combine(needs, cartons().list().ofMaxSize(16).map(StockCheckLaws::named))
                .as(Week::new);
    }

    @Provide
    Arbitrary<LensUnit> cartons() {
        return Combinators.combine(
                        Arbitraries.integers().between(-2, 12),
                        sites(),
                        powers(),
                        Arbitraries.of(UnitState.class),
                        Arbitraries.integers().between(0, 9))
                .as((goodFor, site, power, state, booking) -> Stocks.ofPower(
                        Stocks.unit(
                                "another",
                                goodFor,
                                site,
                                state,
                                Optional.of("ServiceRequest/b" + booking).filter(held -> isHeld(state))),
                        power));
    }

    private static boolean isHeld(UnitState state) {
        return state == UnitState.RESERVED || state == UnitState.PICKED || state == UnitState.IMPLANTED;
    }

    private static LensNeed booked(LensNeed need, int booking) {
        return new LensNeed(
                "ServiceRequest/b" + booking,
                need.role(),
                need.model(),
                need.power(),
                need.cylinder(),
                need.day(),
                need.location());
    }

    private static List<LensUnit> named(List<LensUnit> units) {
        return IntStream.range(0, units.size())
                .mapToObj(index -> {
                    LensUnit unit = units.get(index);
                    return Stocks.ofPower(
                            Stocks.unit(
                                    "u" + index,
                                    (int) TODAY.until(unit.identity().expiry(), ChronoUnit.DAYS),
                                    unit.location(),
                                    unit.state(),
                                    unit.heldFor()),
                            unit.power().value());
                })
                .toList();
    }

    private static Arbitrary<KitRole> roles() {
        return Arbitraries.of(KitRole.class);
    }

    private static Arbitrary<String> sites() {
        return Arbitraries.of(NORTH, SOUTH, EAST);
    }

    private static Arbitrary<Double> powers() {
        return Arbitraries.of(21.5, 22.0);
    }
}
