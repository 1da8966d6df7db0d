package org.lensward.outcome.picture;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.EyeTally;
import org.lensward.quantity.Dioptres;

/** Astigmatism of the refraction after surgery in the double-angle plane, counted on a grid of a quarter dioptre. */
public final class AstigmatismGrid implements EyeTally<AstigmatismGrid> {

    private static final double STEP = 0.25;
    private static final int FARTHEST = 24;
    private static final int WIDTH = 2 * FARTHEST + 1;

    private final Map<Integer, Long> cells = new TreeMap<>();

    /**
     * Eyes of like astigmatism.
     *
     * @param at the middle of the cell
     * @param eyes in it
     */
    public record Cell(Astigmatism at, long eyes) {}

    @Override
    public void add(Admitted admitted) {
        if (admitted instanceof Admitted.Counted counted) {
            counted.refraction().astigmatism().ifPresent(each -> cells.merge(cell(each), 1L, Long::sum));
        }
    }

    private static int cell(Astigmatism astigmatism) {
        return step(astigmatism.x()) * WIDTH + step(astigmatism.y());
    }

    private static int step(Dioptres part) {
        return (int) Math.max(0, Math.min(WIDTH - 1, Math.rint(part.value() / STEP) + FARTHEST));
    }

    @Override
    public void merge(AstigmatismGrid other) {
        other.cells.forEach((cell, eyes) -> cells.merge(cell, eyes, Long::sum));
    }

    /** Every cell with an eye in it, the fullest first. */
    public List<Cell> cells() {
        return cells.entrySet().stream()
                .sorted(Map.Entry.<Integer, Long>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(each -> new Cell(
                        new Astigmatism(part(each.getKey() / WIDTH), part(each.getKey() % WIDTH)), each.getValue()))
                .toList();
    }

    private static Dioptres part(int step) {
        return Dioptres.of((step - FARTHEST) * STEP);
    }
}
