package org.lensward.board.eye;

/** The planned lens where the chosen formula puts it, as wide as its optic; small marks where the other formulas put it. */
final class ImplantInSection {

    /** Half as thick as implants are, by rule. */
    private static final double BULGE = 0.9;

    private static final double UNKNOWN_OPTIC = 6;

    private ImplantInSection() {}

    static void draw(Drawing drawing, Figures.Implant implant) {
        double place = implant.position().value();
        double half = implant.optic().map(each -> each.value()).orElse(UNKNOWN_OPTIC) / 2;
        String top = drawing.at(place, half);
        String bottom = drawing.at(place, -half);
        drawing.path(
                implant.optic().isPresent() ? "implant" : "implant unknown-optic",
                "M" + top + " Q" + drawing.at(place - BULGE, 0) + " " + bottom + " Q" + drawing.at(place + BULGE, 0)
                        + " " + top);
        drawing.line("implant-plane", place, half, place, -half);
        implant.otherPositions().forEach(other -> drawing.line("other-plane", other.value(), 0.5, other.value(), -0.5));
    }
}
