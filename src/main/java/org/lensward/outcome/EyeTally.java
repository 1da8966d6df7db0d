package org.lensward.outcome;

import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What is kept of eyes as they pass: its size does not grow with their number, and two tallies of different eyes can be made one.
 *
 * @param <T> the tally itself
 */
public interface EyeTally<T extends EyeTally<T>> {

    /** Takes in the next eye, counted or not. */
    void add(Admitted admitted);

    /** Takes in everything that another tally of the same kind took in. */
    void merge(T other);

    /** Goes through all eyes once, the parts side by side, and makes the tallies of the parts one. */
    static <T extends EyeTally<T>> T over(OperatedEyes eyes, OutcomePolicy policy, Supplier<T> empty) {
        return IntStream.range(0, eyes.parts())
                .parallel()
                .mapToObj(part -> ofPart(eyes, part, policy, empty.get()))
                .reduce((one, other) -> {
                    one.merge(other);
                    return one;
                })
                .orElseGet(empty);
    }

    private static <T extends EyeTally<T>> T ofPart(OperatedEyes eyes, int part, OutcomePolicy policy, T tally) {
        Admission admission = new Admission(policy);
        try (Stream<OperatedEye> stream = eyes.part(part)) {
            stream.sequential().forEachOrdered(eye -> tally.add(admission.admit(eye)));
        }
        return tally;
    }
}
