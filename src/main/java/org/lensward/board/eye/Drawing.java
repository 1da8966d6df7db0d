package org.lensward.board.eye;

import java.util.Locale;

/**
 * A picture to scale, written as SVG: lengths go in as millimetres and come out as the picture's units. Its text alternatives are a title
 * and a description; styles are classes, for the pages allow none in place.
 */
final class Drawing {

    private final double scale;
    private final double left;
    private final double top;
    private final StringBuilder parts = new StringBuilder();

    /**
     * An empty picture.
     *
     * @param scale units for a millimetre
     * @param left where the millimetre 0 lies, in units from the left
     * @param top likewise from the top
     */
    Drawing(double scale, double left, double top) {
        this.scale = scale;
        this.left = left;
        this.top = top;
    }

    /** A point, in units, of millimetres to the right and upwards. */
    String at(double x, double y) {
        return number(x(x)) + " " + number(y(y));
    }

    double x(double millimetres) {
        return left + millimetres * scale;
    }

    double y(double millimetres) {
        return top - millimetres * scale;
    }

    String length(double millimetres) {
        return number(millimetres * scale);
    }

    Drawing path(String kind, String data) {
        parts.append("<path class=\"")
                .append(kind)
                .append("\" d=\"")
                .append(data)
                .append("\"/>");
        return this;
    }

    Drawing circle(String kind, double x, double y, double radius) {
        parts.append(String.format(
                Locale.ROOT,
                "<circle class=\"%s\" cx=\"%s\" cy=\"%s\" r=\"%s\"/>",
                kind,
                number(x(x)),
                number(y(y)),
                length(radius)));
        return this;
    }

    Drawing line(String kind, double fromX, double fromY, double toX, double toY) {
        parts.append(String.format(
                Locale.ROOT,
                "<line class=\"%s\" x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\"/>",
                kind,
                number(x(fromX)),
                number(y(fromY)),
                number(x(toX)),
                number(y(toY))));
        return this;
    }

    /** Words at a place in millimetres; the kind says how they are set. */
    Drawing words(String kind, double x, double y, String words) {
        parts.append(String.format(
                Locale.ROOT,
                "<text class=\"%s\" x=\"%s\" y=\"%s\">%s</text>",
                kind,
                number(x(x)),
                number(y(y)),
                escaped(words)));
        return this;
    }

    /** The whole picture. */
    String svg(Frame frame) {
        return String.format(
                Locale.ROOT,
                "<svg class=\"%s\" role=\"img\" xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\""
                        + " data-scale=\"%s\" aria-labelledby=\"%s-title %s-desc\">"
                        + "<title id=\"%s-title\">%s</title><desc id=\"%s-desc\">%s</desc>%s</svg>",
                frame.kind(),
                frame.width(),
                frame.height(),
                number(scale),
                frame.kind(),
                frame.kind(),
                frame.kind(),
                escaped(frame.title()),
                frame.kind(),
                escaped(frame.description()),
                parts);
    }

    /**
     * What is around a picture.
     *
     * @param kind its class, and the beginning of its ids
     * @param width in units
     * @param height in units
     * @param title in a few words
     * @param description what a person sees in it
     */
    record Frame(String kind, int width, int height, String title, String description) {}

    static String number(double value) {
        String text = String.format(Locale.ROOT, "%.3f", value);
        return text.replaceAll("\\.?0+$", "").replaceAll("^-0$", "0");
    }

    static String escaped(String words) {
        return words.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
