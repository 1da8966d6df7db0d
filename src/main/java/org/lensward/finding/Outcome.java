package org.lensward.finding;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * A value with what was found on the way, or the reasons there is none.
 *
 * @param <T> the value
 */
public sealed interface Outcome<T> {

    /** Everything found, in the order it was found. */
    List<Finding> findings();

    /** The value, where there is one. */
    Optional<T> value();

    /** Applies the step to the value, if there is one; the findings of both are kept. */
    <R> Outcome<R> then(Function<? super T, ? extends Outcome<R>> step);

    static <T> Outcome<T> ready(T value) {
        return new Ready<>(value, List.of());
    }

    static <T> Outcome<T> ready(T value, List<Finding> findings) {
        return new Ready<>(value, findings);
    }

    static <T> Outcome<T> withheld(Finding... findings) {
        return new Withheld<>(List.of(findings));
    }

    static <T> Outcome<T> withheld(List<Finding> findings) {
        return new Withheld<>(findings);
    }

    /**
     * A value that may be used.
     *
     * @param result the value
     * @param findings what a reader of the value should know
     */
    record Ready<T>(T result, List<Finding> findings) implements Outcome<T> {
        public Ready {
            findings = List.copyOf(findings);
        }

        @Override
        public Optional<T> value() {
            return Optional.of(result);
        }

        @Override
        public <R> Outcome<R> then(Function<? super T, ? extends Outcome<R>> step) {
            Outcome<R> next = step.apply(result);
            if (findings.isEmpty()) {
                return next;
            }
            List<Finding> both =
                    Stream.concat(findings.stream(), next.findings().stream()).toList();
            return next.value()
                    .<Outcome<R>>map(value -> new Ready<>(value, both))
                    .orElseGet(() -> new Withheld<>(both));
        }
    }

    /**
     * No value.
     *
     * @param findings every reason; never empty
     */
    record Withheld<T>(List<Finding> findings) implements Outcome<T> {
        public Withheld {
            findings = List.copyOf(findings);
            if (findings.isEmpty()) {
                throw new IllegalArgumentException("What is withheld says why");
            }
        }

        @Override
        public Optional<T> value() {
            return Optional.empty();
        }

        @Override
        public <R> Outcome<R> then(Function<? super T, ? extends Outcome<R>> step) {
            return new Withheld<>(findings);
        }
    }
}
