package org.lensward.board.eye;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lensward.quantity.Millimetres;

/** The eye in section, to scale along its axis: cornea by its radius, natural lens, planned lens, retina. */
final class SideView {

    private static final double SCALE = 16;
    private static final double LEFT = 16;

    /** Room for the dimension lines and the scale bar, in millimetres. */
    private static final double BELOW = 11;

    private SideView() {}

    static String of(Figures eye) {
        double length = eye.axialLength().value();
        EyeWall wall = EyeWall.of(eye.cornealRadius(), eye.axialLength());
        double axis = SCALE * (wall.lowest() + 0.6);
        Drawing drawing = new Drawing(SCALE, LEFT, axis);
        wall.draw(drawing);
        drawing.line("eye-axis", -0.6, 0, length + 0.6, 0);
        NaturalLens.draw(drawing, eye);
        eye.implant().ifPresent(implant -> ImplantInSection.draw(drawing, implant));
        drawing.words("eye-word", -0.8, wall.lowest() - 0.6, "radius");
        drawing.words("eye-word", -0.8, wall.lowest() - 1.9, eye.cornealRadius().rounded());
        Lengths.draw(drawing, eye, -wall.lowest() - 1.5);
        int width = (int) Math.ceil(2 * LEFT + SCALE * Math.max(length, 24));
        return drawing.svg(new Drawing.Frame(
                "side-view",
                width,
                (int) Math.ceil(axis + SCALE * (wall.lowest() + BELOW)),
                capital(eye.side().toString()) + " eye in section, to scale",
                description(eye)));
    }

    private static String description(Figures eye) {
        List<String> said = new ArrayList<>();
        said.add("Axial length " + eye.axialLength().rounded());
        said.add("mean corneal radius " + eye.cornealRadius().rounded());
        said.add(eye.chamberDepth()
                .map(depth -> "anterior chamber " + depth.rounded() + " deep")
                .orElse("anterior chamber depth not measured"));
        said.add(eye.lensThickness()
                .map(thick -> "natural lens " + thick.rounded() + " thick")
                .orElse("lens thickness not measured"));
        eye.implant().ifPresent(implant -> {
            said.add("the planned lens at " + implant.position().rounded() + " by " + implant.formula());
            said.add(implant.optic()
                    .map(optic -> "its optic " + optic.rounded() + " wide")
                    .orElse("its optic's diameter not in the catalogue"));
        });
        return String.join(", ", said) + ". The eye wall and the shape of the lenses are drawn by rule, not measured.";
    }

    static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** The dimension lines below the eye and the scale bar. */
    private static final class Lengths {

        private static final double STEP = 1.9;

        private final Drawing drawing;
        private double row;

        private Lengths(Drawing drawing, double first) {
            this.drawing = drawing;
            this.row = first;
        }

        static void draw(Drawing drawing, Figures eye, double first) {
            Lengths lengths = new Lengths(drawing, first);
            eye.chamberDepth().ifPresent(depth -> lengths.of("chamber-depth", 0, depth, "anterior chamber"));
            eye.implant()
                    .ifPresent(implant ->
                            lengths.of("lens-position", 0, implant.position(), "lens by " + implant.formula()));
            eye.chamberDepth().ifPresent(depth -> eye.lensThickness()
                    .ifPresent(thick -> lengths.of("lens-thickness", depth.value(), thick, "natural lens")));
            lengths.of("axial-length", 0, eye.axialLength(), "axial length");
            double end = Math.max(eye.axialLength().value(), 24);
            drawing.line("scale-bar", end - 5, lengths.row, end, lengths.row);
            drawing.words("eye-word ends", end - 5.4, lengths.row - 0.4, "5 mm");
        }

        private void of(String kind, double from, Millimetres length, String words) {
            double to = from + length.value();
            drawing.line("extent " + kind, from, row, to, row);
            drawing.line("extent-end", from, row - 0.35, from, row + 0.35);
            drawing.line("extent-end", to, row - 0.35, to, row + 0.35);
            boolean whole = length.value() > 14;
            drawing.words(
                    "eye-word",
                    whole ? from : to + 0.5,
                    whole ? row - 1.35 : row - 0.4,
                    words + " " + length.rounded());
            row -= STEP;
        }
    }
}
