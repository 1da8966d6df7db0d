package org.lensward.board.eye;

import java.util.List;
import java.util.Locale;
import org.lensward.plan.Prediction;
import org.lensward.quantity.Dioptres;

/**
 * One formula's predicted refraction with its 95 % interval, against the target, on a scale that all formulas of the page share.
 *
 * @param from the left end of the scale
 * @param to the right end
 * @param target aimed at
 */
record RefractionBar(double from, double to, Dioptres target) {

    /** The normal distribution's two-sided 95 % point. */
    static final double NINETY_FIVE = 1.959964;

    static final double WIDTH = 320;
    static final double PAD = 8;

    /** The scale that holds every interval and the target, in whole half dioptres. */
    static RefractionBar over(List<Prediction> predictions, Dioptres target) {
        double low = target.value();
        double high = target.value();
        for (Prediction each : predictions) {
            low = Math.min(low, each.predicted().value() - half(each));
            high = Math.max(high, each.predicted().value() + half(each));
        }
        return new RefractionBar(Math.floor(low * 2) / 2, Math.ceil(high * 2) / 2, target);
    }

    /** Half the 95 % interval. */
    static double half(Prediction prediction) {
        return NINETY_FIVE * prediction.uncertainty().deviation().value();
    }

    /** The bar; the chosen formula has a filled square, the others an open ring. */
    String of(Prediction prediction) {
        double at = place(prediction.predicted().value());
        double low = place(prediction.predicted().value() - half(prediction));
        double high = place(prediction.predicted().value() + half(prediction));
        StringBuilder svg = new StringBuilder(String.format(
                Locale.ROOT,
                "<svg class=\"refraction-bar\" viewBox=\"0 0 %.0f 22\" aria-hidden=\"true\" data-from=\"%s\" data-to=\"%s\">",
                WIDTH,
                Drawing.number(from),
                Drawing.number(to)));
        for (double mark = from; mark <= to + 1e-9; mark += 0.5) {
            line(svg, "half-dioptre", place(mark), 2, place(mark), 20);
        }
        line(svg, "target-line", place(target.value()), 0, place(target.value()), 22);
        line(svg, prediction.chosen() ? "interval chosen" : "interval", low, 11, high, 11);
        svg.append(
                prediction.chosen()
                        ? String.format(
                                Locale.ROOT,
                                "<rect class=\"predicted chosen\" x=\"%s\" y=\"5\" width=\"12\" height=\"12\"/>",
                                Drawing.number(at - 6))
                        : String.format(
                                Locale.ROOT,
                                "<circle class=\"predicted\" cx=\"%s\" cy=\"11\" r=\"5\"/>",
                                Drawing.number(at)));
        return svg.append("</svg>").toString();
    }

    private static void line(StringBuilder svg, String kind, double x1, double y1, double x2, double y2) {
        svg.append(String.format(
                Locale.ROOT,
                "<line class=\"%s\" x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\"/>",
                kind,
                Drawing.number(x1),
                Drawing.number(y1),
                Drawing.number(x2),
                Drawing.number(y2)));
    }

    double place(double dioptres) {
        return PAD + (dioptres - from) / (to - from) * (WIDTH - 2 * PAD);
    }
}
