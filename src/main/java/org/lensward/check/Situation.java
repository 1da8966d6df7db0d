package org.lensward.check;

import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.finding.FindingCode;

/** What is compared with what, where, and under which policy. */
record Situation(Checkpoint at, Expected expected, Presented presented, CheckPolicy policy) {

    /** The differences, where the checkpoint asks for them. */
    Stream<Difference> where(Comparison asked, Stream<Difference> differences) {
        return at.asks(asked) ? differences : Stream.empty();
    }

    /** None if both are equal; what was not stated is not equal to anything. */
    static <T> Stream<Difference> unequal(FindingCode code, String what, T expected, Optional<T> presented) {
        return presented.filter(expected::equals).isPresent()
                ? Stream.empty()
                : Stream.of(new Difference(code, what, expected.toString(), said(presented)));
    }

    /** As it was stated, or that it was not. */
    static String said(Optional<?> stated) {
        return stated.map(Object::toString).orElse(Difference.NOT_STATED);
    }
}
