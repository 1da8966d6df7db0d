package org.lensward.outcome.error;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.lensward.eye.Limit;
import org.lensward.quantity.Millimetres;

/** Bands of axial length: each begins at a limit and ends below the next. */
record LengthBands(List<Group> bands, double[] limits) {

    static LengthBands of(List<Limit<Millimetres>> limits) {
        double[] edges =
                limits.stream().mapToDouble(limit -> limit.value().value()).toArray();
        List<Group> bands = IntStream.rangeClosed(0, edges.length)
                .mapToObj(index -> new Group(Group.By.AXIAL_LENGTH, words(edges, index)))
                .toList();
        return new LengthBands(bands, edges);
    }

    private static String words(double[] edges, int index) {
        if (edges.length == 0) {
            return "any length";
        }
        if (index == 0) {
            return String.format(Locale.ROOT, "below %.2f mm", edges[0]);
        }
        return index == edges.length
                ? String.format(Locale.ROOT, "from %.2f mm", edges[index - 1])
                : String.format(Locale.ROOT, "from %.2f below %.2f mm", edges[index - 1], edges[index]);
    }

    Group band(Millimetres length) {
        int index = 0;
        while (index < limits.length && length.value() >= limits[index]) {
            index++;
        }
        return bands.get(index);
    }
}
