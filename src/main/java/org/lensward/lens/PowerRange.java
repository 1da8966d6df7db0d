package org.lensward.lens;

import java.math.BigDecimal;
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

    /** Every power made, ascending, computed in decimals: the powers that labels print, such as 1.3 and not 1.3000000000000003. */
    public List<Dioptres> powers() {
        BigDecimal first = decimal(lowest);
        BigDecimal each = decimal(step);
        int last = decimal(highest).subtract(first).divideToIntegralValue(each).intValueExact();
        return IntStream.rangeClosed(0, last)
                .mapToObj(index -> first.add(each.multiply(BigDecimal.valueOf(index))))
                .map(power -> Dioptres.of(power.doubleValue()))
                .toList();
    }

    private static BigDecimal decimal(Dioptres power) {
        return BigDecimal.valueOf(power.value());
    }
}
