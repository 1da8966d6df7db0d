package org.lensward.board.eye;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lensward.eye.Biometry;
import org.lensward.eye.Eye;
import org.lensward.eye.Keratometry;
import org.lensward.eye.Measured;
import org.lensward.quantity.Quantity;

/**
 * What was measured of the eye, each number with its place in the record.
 *
 * @param how method and day
 * @param lines name and number
 */
record MeasuredPart(String how, List<Line> lines) {

    /**
     * One measurement.
     *
     * @param name what was measured
     * @param value the number; empty where it was not
     */
    record Line(String name, Optional<Shown> value) {}

    static MeasuredPart of(Eye eye, Biometry biometry) {
        List<Line> lines = new ArrayList<>();
        lines.add(line("Axial length", biometry.axialLength()));
        cornea(lines, biometry.keratometry());
        lines.add(line("Anterior chamber", biometry.details().anteriorChamberDepth()));
        lines.add(line("Lens thickness", biometry.details().lensThickness()));
        lines.add(line("Pupil, dilated", eye.pupil()));
        return new MeasuredPart(
                biometry.method().toString().toLowerCase(Locale.ROOT).replace('_', ' ') + ", " + biometry.measuredOn(),
                lines);
    }

    private static void cornea(List<Line> lines, Measured<Keratometry> cornea) {
        Keratometry shape = cornea.value();
        lines.add(new Line(
                "Cornea, flat",
                Optional.of(Shown.of(
                        shape.flatPower().rounded() + " (" + shape.flatRadius().rounded() + ")", cornea.evidence()))));
        String at = shape.steepMeridian()
                .map(each -> " at " + FrontView.whole(each))
                .orElse("");
        lines.add(new Line(
                "Cornea, steep",
                Optional.of(Shown.of(
                        shape.steepPower().rounded() + " ("
                                + shape.steepRadius().rounded() + ")" + at,
                        cornea.evidence()))));
    }

    private static Line line(String name, Measured<? extends Quantity> measured) {
        return new Line(name, Optional.of(Shown.of(measured)));
    }

    private static Line line(String name, Optional<? extends Measured<? extends Quantity>> measured) {
        return new Line(name, measured.map(each -> Shown.of(each)));
    }
}
