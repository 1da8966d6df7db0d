package org.lensward.board.eye;

import org.lensward.quantity.Millimetres;

/**
 * The outline of the eye. The cornea is a circle of its measured radius, as wide as corneas are; behind it the wall is the one circle
 * through the cornea's rim and the retina on the axis. Only radius and length are measured.
 *
 * @param radius of the cornea
 * @param length of the eye
 * @param rim half the width of the cornea, drawn alike for every eye
 */
record EyeWall(double radius, double length, double rim) {

    /** Half of an ordinary white-to-white of 11.7 mm; value from memory. */
    private static final double HALF_CORNEA = 5.85;

    static EyeWall of(Millimetres cornealRadius, Millimetres axialLength) {
        double radius = cornealRadius.value();
        return new EyeWall(radius, axialLength.value(), Math.min(HALF_CORNEA, 0.95 * radius));
    }

    /** How far the rim of the cornea lies behind its apex. */
    double sag() {
        return radius - Math.sqrt(radius * radius - rim * rim);
    }

    /** The radius of the wall, through rim and retina. */
    double wall() {
        double depth = length - sag();
        return (depth * depth + rim * rim) / (2 * depth);
    }

    /** How far the wall reaches below the axis. */
    double lowest() {
        return Math.max(wall(), rim);
    }

    void draw(Drawing drawing) {
        String arc = drawing.length(wall());
        String curve = drawing.length(radius);
        drawing.path(
                "eye-inside",
                "M" + drawing.at(sag(), -rim) + " A" + curve + " " + curve + " 0 0 1 " + drawing.at(sag(), rim) + " A"
                        + arc
                        + " " + arc + " 0 0 1 " + drawing.at(length, 0) + " A" + arc + " " + arc + " 0 0 1 "
                        + drawing.at(sag(), -rim) + " Z");
        drawing.path(
                "eye-wall",
                "M" + drawing.at(sag(), rim) + " A" + arc + " " + arc + " 0 0 1 " + drawing.at(length, 0) + " A" + arc
                        + " " + arc + " 0 0 1 " + drawing.at(sag(), -rim));
        drawing.path(
                "cornea",
                "M" + drawing.at(sag(), -rim) + " A" + curve + " " + curve + " 0 0 1 " + drawing.at(0, 0) + " A" + curve
                        + " " + curve + " 0 0 1 " + drawing.at(sag(), rim));
        drawing.circle("retina-point", length, 0, 0.18);
    }
}
