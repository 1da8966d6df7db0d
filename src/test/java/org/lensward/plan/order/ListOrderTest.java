package org.lensward.plan.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.lensward.quantity.Dioptres;

/** The order of a theatre's list: common practice, no source; its optimality against every permutation. */
class ListOrderTest {

    private static final Dioptres STEP = Dioptres.of(0.5);

    private static ListedEye eye(String id, String name, double power, Place place) {
        return new ListedEye(
                "ServiceRequest/" + id,
                "Patient/" + id,
                Set.of(name),
                Optional.of(Dioptres.of(power)),
                place,
                place == Place.ANYWHERE ? List.of() : List.of("because " + place));
    }

    private static List<String> order(ListedEye... eyes) {
        return new ListOrder(STEP)
                .suggest(List.of(eyes)).stream()
                        .map(turn -> turn.eye().booking().substring(15))
                        .toList();
    }

    @Test
    void what_nothing_speaks_against_stays_as_booked() {
        assertThat(order(
                        eye("a", "A", 20, Place.ANYWHERE),
                        eye("b", "B", 22, Place.ANYWHERE),
                        eye("c", "C", 24, Place.ANYWHERE)))
                .containsExactly("a", "b", "c");
    }

    @Test
    void raised_pressure_comes_first_difficult_eyes_early_infection_last_and_the_unplanned_after_all() {
        assertThat(order(
                        eye("unplanned", "A", 10, Place.NOT_YET),
                        eye("infected", "B", 12, Place.LAST),
                        eye("plain", "C", 14, Place.ANYWHERE),
                        eye("difficult", "D", 16, Place.EARLY),
                        eye("pressure", "E", 18, Place.FIRST)))
                .containsExactly("pressure", "difficult", "plain", "infected", "unplanned");
    }

    @Test
    void namesakes_are_kept_apart() {
        assertThat(order(
                        eye("a", "Moss", 20, Place.ANYWHERE),
                        eye("b", "Moss", 24, Place.ANYWHERE),
                        eye("c", "Fern", 28, Place.ANYWHERE)))
                .containsExactly("a", "c", "b");
    }

    @Test
    void similar_powers_are_kept_apart_and_equal_ones_are_not() {
        assertThat(order(
                        eye("a", "A", 20, Place.ANYWHERE),
                        eye("b", "B", 20.5, Place.ANYWHERE),
                        eye("c", "C", 24, Place.ANYWHERE)))
                .containsExactly("a", "c", "b");
        assertThat(order(
                        eye("a", "A", 20, Place.ANYWHERE),
                        eye("b", "B", 20, Place.ANYWHERE),
                        eye("c", "C", 24, Place.ANYWHERE)))
                .containsExactly("a", "b", "c");
    }

    @Test
    void two_eyes_of_one_patient_are_no_namesakes() {
        ListedEye right = eye("a", "Moss", 20, Place.ANYWHERE);
        ListedEye left = new ListedEye(
                "ServiceRequest/b", right.patient(), right.likeness(), Optional.empty(), Place.ANYWHERE, List.of());
        assertThat(right.isNamesakeOf(left)).isFalse();
        assertThat(order(right, left)).containsExactly("a", "b");
    }

    @Test
    void where_there_is_no_room_between_the_neighbour_is_told_of() {
        List<SuggestedTurn> order = new ListOrder(STEP)
                .suggest(List.of(eye("a", "Moss", 20, Place.FIRST), eye("b", "Moss", 20.5, Place.LAST)));
        assertThat(order.get(0).reasons()).containsExactly("because FIRST");
        assertThat(order.get(1).reasons())
                .hasSize(3)
                .anyMatch(why -> why.contains("namesake"))
                .anyMatch(why -> why.contains("similar power"));
    }

    @Test
    void an_empty_list_has_no_order() {
        assertThat(order()).isEmpty();
    }

    @Test
    void a_long_list_is_ordered_whole() {
        List<ListedEye> forty = IntStream.range(0, 40)
                .mapToObj(index -> eye("e" + index, "N" + index % 3, 10 + index, Place.ANYWHERE))
                .toList();
        List<SuggestedTurn> order = new ListOrder(STEP).suggest(forty);
        assertThat(order).extracting(SuggestedTurn::eye).containsExactlyInAnyOrderElementsOf(forty);
        assertThat(order).allMatch(turn -> turn.reasons().isEmpty());
    }

    @Test
    void an_eye_prints_its_booking_alone() {
        assertThat(eye("a", "Moss", 20, Place.FIRST)).hasToString("ServiceRequest/a");
    }

    @Provide
    Arbitrary<List<ListedEye>> lists() {
        Arbitrary<ListedEye> eye = Combinators.combine(
                        Arbitraries.of("Moss", "Fern", "Reed"),
                        Arbitraries.of(20.0, 20.5, 21.0, 24.0),
                        Arbitraries.of(Place.EARLY, Place.ANYWHERE, Place.ANYWHERE, Place.LAST))
                .as((name, power, place) -> eye("x", name, power, place));
        return eye.list().ofMinSize(1).ofMaxSize(6).map(ListOrderTest::numbered);
    }

    private static List<ListedEye> numbered(List<ListedEye> eyes) {
        return IntStream.range(0, eyes.size())
                .mapToObj(index -> eye(
                        "e" + index,
                        eyes.get(index).likeness().iterator().next(),
                        eyes.get(index).power().orElseThrow().value(),
                        eyes.get(index).place()))
                .toList();
    }

    @Property(tries = 300)
    void no_permutation_that_keeps_the_places_is_better(@ForAll("lists") List<ListedEye> booked) {
        List<ListedEye> placed =
                booked.stream().sorted(Comparator.comparing(ListedEye::place)).toList();
        List<ListedEye> suggested = new ListOrder(STEP)
                .suggest(booked).stream().map(SuggestedTurn::eye).toList();
        assertThat(suggested).extracting(ListedEye::place).isSorted();
        long least = permutations(placed).stream()
                .filter(order -> placesKept(order))
                .mapToLong(order -> cost(order, placed))
                .min()
                .orElseThrow();
        assertThat(cost(suggested, placed)).isEqualTo(least);
    }

    private static boolean placesKept(List<ListedEye> order) {
        return IntStream.range(1, order.size())
                .allMatch(index ->
                        order.get(index - 1).place().compareTo(order.get(index).place()) <= 0);
    }

    /** Namesakes outweigh any number of similar powers, those any moving about. */
    private static long cost(List<ListedEye> order, List<ListedEye> placed) {
        long cost = 0;
        for (int index = 0; index < order.size(); index++) {
            cost += Math.abs(index - placed.indexOf(order.get(index)));
            if (index > 0) {
                ListedEye one = order.get(index - 1);
                ListedEye other = order.get(index);
                cost += one.likeness().equals(other.likeness()) ? 1_000_000 : 0;
                double apart = Math.abs(one.power().orElseThrow().value()
                        - other.power().orElseThrow().value());
                cost += apart > 0 && apart <= 0.5 ? 1_000 : 0;
            }
        }
        return cost;
    }

    private static List<List<ListedEye>> permutations(List<ListedEye> eyes) {
        if (eyes.isEmpty()) {
            return List.of(List.of());
        }
        List<List<ListedEye>> all = new ArrayList<>();
        for (ListedEye first : eyes) {
            List<ListedEye> rest = eyes.stream().filter(each -> each != first).toList();
            for (List<ListedEye> tail : permutations(rest)) {
                List<ListedEye> order = new ArrayList<>(List.of(first));
                order.addAll(tail);
                all.add(order);
            }
        }
        return all;
    }
}
