package org.lensward.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Function;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Outcome obeys the three laws of a monad (Wadler, Monads for functional programming, 1992) and loses no finding. */
class OutcomeLaws {

    @Provide
    Arbitrary<Outcome<Integer>> outcomes() {
        Arbitrary<List<Finding>> found = Arbitraries.of(Findings.ALL).list().ofMaxSize(4);
        Arbitrary<Outcome<Integer>> ready = Combinators.combine(
                        Arbitraries.integers().between(-9, 9), found)
                .as(Outcome::ready);
        Arbitrary<Outcome<Integer>> withheld =
                Arbitraries.of(Findings.ALL).list().ofMinSize(1).ofMaxSize(4).map(Outcome::withheld);
        return Arbitraries.oneOf(ready, withheld);
    }

    @Property
    void then_keeps_the_findings_of_both_steps_in_order(
            @ForAll("outcomes") Outcome<Integer> first, @ForAll("outcomes") Outcome<Integer> second) {
        List<Finding> expected = first.value().isEmpty()
                ? first.findings()
                : Stream.concat(first.findings().stream(), second.findings().stream())
                        .toList();
        assertThat(first.then(ignored -> second).findings()).isEqualTo(expected);
    }

    @Property
    void then_has_a_value_only_if_both_steps_have(
            @ForAll("outcomes") Outcome<Integer> first, @ForAll("outcomes") Outcome<Integer> second) {
        assertThat(first.then(ignored -> second).value().isPresent())
                .isEqualTo(first.value().isPresent() && second.value().isPresent());
    }

    @Property
    void what_is_withheld_stays_withheld_and_the_next_step_is_not_taken(@ForAll("outcomes") Outcome<Integer> first) {
        AtomicBoolean taken = new AtomicBoolean();
        Outcome<String> next = first.then(value -> {
            taken.set(true);
            return Outcome.ready("value " + value);
        });
        assertThat(taken.get()).isEqualTo(first.value().isPresent());
        assertThat(next.value()).isEqualTo(first.value().map(value -> "value " + value));
    }

    @Property
    void a_bare_value_then_a_step_is_the_step(@ForAll int value, @ForAll("outcomes") Outcome<Integer> next) {
        Function<Integer, Outcome<Integer>> step = given -> next.then(other -> Outcome.ready(given ^ other));
        assertThat(Outcome.ready(value).then(step)).isEqualTo(step.apply(value));
    }

    @Property
    void an_outcome_then_nothing_new_is_the_outcome(@ForAll("outcomes") Outcome<Integer> outcome) {
        assertThat(outcome.<Integer>then(Outcome::ready)).isEqualTo(outcome);
    }

    @Property
    void steps_may_be_grouped_either_way(
            @ForAll("outcomes") Outcome<Integer> first,
            @ForAll("outcomes") Outcome<Integer> second,
            @ForAll("outcomes") Outcome<Integer> third) {
        assertThat(first.then(a -> second).then(b -> third)).isEqualTo(first.then(a -> second.then(b -> third)));
    }

    @Example
    void what_is_withheld_says_why() {
        assertThatIllegalArgumentException().isThrownBy(Outcome::withheld).withMessageContaining("says why");
    }
}
