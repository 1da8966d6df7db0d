package org.lensward.lens;

import java.util.List;
import java.util.stream.IntStream;
import org.lensward.quantity.Dioptres;

/**
 * Labelled powers a model is made in: from the lowest to the highest in equal steps.
 *
 * @param lowest the first power
 * @param highest the last power, not below the first
 * @param step above nought
 */
public record PowerRange(Dioptres lowest, Dioptres highest, Dioptres step) {

    public PowerRange {
        if (step.value() <= 0 || lowest.compareTo(highest) > 0) {
            throw new IllegalArgumentException("No powers from " + lowest + " to " + highest + " by " + step);
        }
    }

    /** Every power made, ascending, free of the rounding that adding steps would gather. */
    public List<Dioptres> powers() {
        int last = (int) Math.floor((highest.value() - lowest.value()) / step.value() + 1e-9);
        return IntStream.rangeClosed(0, last)
                .mapToObj(index -> Dioptres.of(lowest.value() + index * step.value()))
                .toList();
    }
}
