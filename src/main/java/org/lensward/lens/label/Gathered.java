package org.lensward.lens.label;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;

/** Several readings as one: all that they give, or all that is wrong with them. */
final class Gathered {

    private Gathered() {}

    static <T> Outcome<List<T>> of(List<Outcome<List<T>>> outcomes) {
        List<Finding> findings = outcomes.stream()
                .flatMap(outcome -> outcome.findings().stream())
                .toList();
        return outcomes.stream().allMatch(outcome -> outcome.value().isPresent())
                ? Outcome.ready(all(outcomes.stream().map(Outcome::value)), findings)
                : Outcome.withheld(findings);
    }

    private static <T> List<T> all(Stream<Optional<List<T>>> values) {
        return values.flatMap(Optional::stream).flatMap(List::stream).toList();
    }
}
