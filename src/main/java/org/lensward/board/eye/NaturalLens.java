package org.lensward.board.eye;

/** The lens the eye was born with, where its front is known: depth and thickness measured, height and bulge by rule. */
final class NaturalLens {

    private static final double HALF_HEIGHT = 4.6;

    private NaturalLens() {}

    static void draw(Drawing drawing, Figures eye) {
        eye.chamberDepth().ifPresent(depth -> {
            double front = depth.value();
            double thick = eye.lensThickness().map(each -> each.value()).orElse(0.0);
            double equator = front + (thick > 0 ? thick * 0.4 : 1.6);
            String top = drawing.at(equator, HALF_HEIGHT);
            String bottom = drawing.at(equator, -HALF_HEIGHT);
            drawing.path(
                    "natural-lens",
                    "M" + top + " Q" + drawing.at(2 * front - equator, 0) + " " + bottom
                            + (thick > 0 ? " Q" + drawing.at(2 * (front + thick) - equator, 0) + " " + top : ""));
            iris(drawing, eye, front);
        });
    }

    /** To the edge of the dilated pupil, where that was measured. */
    private static void iris(Drawing drawing, Figures eye, double front) {
        eye.pupil().ifPresent(pupil -> {
            double edge = pupil.value() / 2;
            drawing.line("iris", front + 0.3, 5.4, front - 0.1, edge);
            drawing.line("iris", front + 0.3, -5.4, front - 0.1, -edge);
        });
    }
}
