package org.lensward.outcome.error;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Adjusts chances for being many: Holm, Scand J Stat 1979;6:65. */
final class Holm {

    private Holm() {}

    /** The adjusted chances, in the order given. */
    static double[] adjusted(double... alone) {
        List<Integer> ascending = IntStream.range(0, alone.length)
                .boxed()
                .sorted(Comparator.comparingDouble((Integer each) -> alone[each]))
                .toList();
        double[] adjusted = new double[alone.length];
        double least = 0;
        for (int rank = 0; rank < alone.length; rank++) {
            int each = ascending.get(rank);
            least = Math.max(least, Math.min(1, alone[each] * (alone.length - rank)));
            adjusted[each] = least;
        }
        return adjusted;
    }
}
