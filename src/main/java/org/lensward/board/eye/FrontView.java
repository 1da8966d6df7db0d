package org.lensward.board.eye;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lensward.eye.Laterality;
import org.lensward.quantity.Degrees;
import org.lensward.risk.opening.Overlap;

/**
 * The eye from the front, to scale: pupil, optic, planned opening, and for a toric lens axis and incision. Angles as they are written: 0 to
 * 180 degrees, anticlockwise as somebody sees it who faces the patient, 12 o'clock above.
 */
final class FrontView {

    private static final double SCALE = 24;
    private static final int SIZE = 400;
    private static final double MIDDLE = 200;

    /** Where the numbers of the dial stand, outside an ordinary cornea. */
    private static final double DIAL = 6.3;

    private static final double NUMBERS = 7.15;

    private FrontView() {}

    static String of(Figures eye) {
        Drawing drawing = new Drawing(SCALE, MIDDLE, MIDDLE);
        drawing.circle("limbus", 0, 0, 5.85);
        eye.pupil().ifPresent(pupil -> drawing.circle("pupil", 0, 0, pupil.value() / 2));
        eye.implant().ifPresent(implant -> {
            implant.optic().ifPresent(optic -> drawing.circle("optic", 0, 0, optic.value() / 2));
            implant.opening().ifPresent(opening -> opening(drawing, opening));
            implant.axis().ifPresent(axis -> axis(drawing, axis));
            implant.incision().ifPresent(incision -> incision(drawing, incision));
        });
        dial(drawing);
        sides(drawing, eye.side());
        drawing.line("scale-bar", -8, -7.9, -6, -7.9);
        drawing.words("eye-word", -5.8, -8.05, "2 mm");
        return drawing.svg(new Drawing.Frame(
                "front-view",
                SIZE,
                SIZE,
                SideView.capital(eye.side().toString()) + " eye from the front, to scale",
                description(eye)));
    }

    /** The rim of capsule over the optic is what lies between the circles; off centre as far as is to be expected, drawn to the side. */
    private static void opening(Drawing drawing, Overlap overlap) {
        double optic = overlap.optic().value() / 2;
        double opening = overlap.opening().value() / 2;
        double off = overlap.decentration().value();
        drawing.path("overlap", ring(drawing, 0, optic) + " " + ring(drawing, off, opening));
        drawing.circle("opening", off, 0, opening);
        drawing.line("centre", off, 0.25, off, -0.25);
        drawing.line("centre", off - 0.25, 0, off + 0.25, 0);
    }

    private static String ring(Drawing drawing, double x, double radius) {
        String arc = " A" + drawing.length(radius) + " " + drawing.length(radius) + " 0 1 0 ";
        return "M" + drawing.at(x + radius, 0) + arc + drawing.at(x - radius, 0) + arc + drawing.at(x + radius, 0)
                + " Z";
    }

    private static void axis(Drawing drawing, Degrees axis) {
        double x = Math.cos(Math.toRadians(axis.value()));
        double y = Math.sin(Math.toRadians(axis.value()));
        drawing.line("toric-axis", -5.6 * x, -5.6 * y, 5.6 * x, 5.6 * y);
        for (double mark : new double[] {2.2, 2.5, 2.8}) {
            drawing.circle("toric-mark", mark * x, mark * y, 0.09);
            drawing.circle("toric-mark", -mark * x, -mark * y, 0.09);
        }
    }

    private static void incision(Drawing drawing, Degrees meridian) {
        double turn = Math.toRadians(meridian.value());
        double x = Math.cos(turn);
        double y = Math.sin(turn);
        drawing.line("incision", 5.85 * x + 1.1 * y, 5.85 * y - 1.1 * x, 5.85 * x - 1.1 * y, 5.85 * y + 1.1 * x);
    }

    private static void dial(Drawing drawing) {
        for (int degrees = 0; degrees < 360; degrees += 15) {
            double x = Math.cos(Math.toRadians(degrees));
            double y = Math.sin(Math.toRadians(degrees));
            double inner = degrees % 45 == 0 ? DIAL - 0.35 : DIAL - 0.15;
            drawing.line("dial", inner * x, inner * y, DIAL * x, DIAL * y);
            if (degrees % 45 == 0 && degrees <= 180) {
                drawing.words("eye-word middle", NUMBERS * x, NUMBERS * y - 0.2, String.valueOf(degrees));
            }
        }
    }

    /** Facing the patient, the nose lies to the right of a right eye. */
    private static void sides(Drawing drawing, Laterality side) {
        boolean right = side == Laterality.RIGHT;
        drawing.words("eye-side middle", 0, 7.65, side.name() + " EYE");
        drawing.words("eye-word ends", 8.2, -6.9, right ? "nose" : "ear");
        drawing.words("eye-word", -8.2, -6.9, right ? "ear" : "nose");
    }

    private static String description(Figures eye) {
        List<String> said = new ArrayList<>();
        said.add("The " + eye.side() + " eye as somebody sees it who faces the patient");
        said.add(eye.pupil()
                .map(pupil -> "pupil " + pupil.rounded() + " when dilated")
                .orElse("pupil not measured"));
        eye.implant().ifPresent(implant -> {
            implant.optic().ifPresent(optic -> said.add("optic " + optic.rounded()));
            implant.opening()
                    .ifPresent(opening -> said.add("planned opening "
                            + opening.opening().rounded()
                            + ", its centre off by up to "
                            + opening.decentration().rounded()
                            + " whichever way, least overlap " + opening.least().rounded()));
            said.addAll(toric(implant.axis(), implant.incision()));
        });
        return String.join("; ", said) + ". The limbus is drawn by rule.";
    }

    private static List<String> toric(Optional<Degrees> axis, Optional<Degrees> incision) {
        List<String> said = new ArrayList<>();
        axis.ifPresent(each -> said.add("axis of the lens marks " + whole(each)));
        incision.ifPresent(each -> said.add("incision at " + whole(each)));
        return said;
    }

    static String whole(Degrees angle) {
        return String.format(Locale.ROOT, "%.0f\u00b0", angle.value());
    }
}
