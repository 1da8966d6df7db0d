package org.lensward.board.day;

import java.util.Locale;
import org.lensward.quantity.Dioptres;

/**
 * A predicted refraction against its target, drawn: the target in the middle, half a dioptre to either side shaded, the interval a line,
 * the prediction a dot. What lies beyond the scale ends at its edge with an arrow.
 *
 * @param predicted spherical equivalent that the lens is predicted to leave
 * @param deviation its standard deviation
 * @param target what is wanted
 */
public record PredictionBar(Dioptres predicted, Dioptres deviation, Dioptres target) {

    /** Width of the drawing. */
    public static final int WIDTH = 150;

    private static final int HALF = WIDTH / 2;

    /** Dioptres from the middle to an edge. */
    private static final double REACH = 1.5;

    /** Two-sided 95 % of a normal distribution. */
    private static final double NINETY_FIVE = 1.96;

    /** Where the interval begins. */
    public String from() {
        return at(low());
    }

    /** Where the interval ends. */
    public String to() {
        return at(high());
    }

    /** Where the prediction is. */
    public String dot() {
        return at(predicted.value());
    }

    /** Whether the interval begins before the scale does. */
    public boolean before() {
        return low() < target.value() - REACH;
    }

    /** Whether it ends after it. */
    public boolean after() {
        return high() > target.value() + REACH;
    }

    /** The prediction, as text. */
    public String leaves() {
        return signed(predicted.value());
    }

    /** The interval, as text. */
    public String interval() {
        return signed(low()) + " to " + signed(high());
    }

    /** The target, as text. */
    public String wanted() {
        return signed(target.value());
    }

    private double low() {
        return predicted.value() - NINETY_FIVE * deviation.value();
    }

    private double high() {
        return predicted.value() + NINETY_FIVE * deviation.value();
    }

    private String at(double refraction) {
        double place = HALF + (refraction - target.value()) / REACH * HALF;
        return String.format(Locale.ROOT, "%.1f", Math.max(0, Math.min(WIDTH, place)));
    }

    private static String signed(double value) {
        return String.format(Locale.ROOT, "%+.2f", value).replace('-', '\u2212');
    }
}
