package org.lensward.board.eye;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Biometry;
import org.lensward.eye.Eye;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.plan.EyePlan;
import org.lensward.plan.LensPlan;
import org.lensward.plan.Prediction;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Millimetres;
import org.lensward.risk.opening.Overlap;

/**
 * What of one eye is drawn. What is empty was not measured or is not planned, and is not drawn.
 *
 * @param side which eye
 * @param axialLength from the corneal surface to the retina
 * @param cornealRadius mean radius of the anterior cornea
 * @param chamberDepth from the epithelium to the natural lens
 * @param lensThickness of the natural lens
 * @param implant the planned lens; empty where the plan is withheld
 * @param pupil diameter when dilated
 */
record Figures(
        Laterality side,
        Millimetres axialLength,
        Millimetres cornealRadius,
        Optional<Millimetres> chamberDepth,
        Optional<Millimetres> lensThickness,
        Optional<Implant> implant,
        Optional<Millimetres> pupil) {

    /**
     * The planned lens in the eye.
     *
     * @param formula by which it was chosen
     * @param position where that formula puts it, from the cornea
     * @param otherPositions where the others put it
     * @param optic diameter of its optic, where the catalogue says
     * @param opening how the planned opening lies over it
     * @param axis of the lens marks, for a toric lens
     * @param incision meridian of the incision, for a toric lens
     */
    record Implant(
            String formula,
            Millimetres position,
            List<Millimetres> otherPositions,
            Optional<Millimetres> optic,
            Optional<Overlap> opening,
            Optional<Degrees> axis,
            Optional<Degrees> incision) {}

    /** Of a plan; empty where the eye was not measured. */
    static Optional<Figures> of(EyePlan plan, Eye eye, Degrees incision) {
        return eye.biometry().map(measured -> {
            Biometry used = plan.lens().map(LensPlan::biometry).orElse(measured);
            return new Figures(
                    eye.side(),
                    used.axialLength().value(),
                    used.keratometry().value().meanRadius(),
                    used.details().anteriorChamberDepth().map(Measured::value),
                    used.details().lensThickness().map(Measured::value),
                    plan.lens().map(lens -> implant(plan, lens, incision)),
                    eye.pupil().map(Measured::value));
        });
    }

    private static Implant implant(EyePlan plan, LensPlan lens, Degrees incision) {
        Prediction chosen = lens.chosen();
        return new Implant(
                chosen.view().method().words(),
                position(chosen),
                others(lens).map(Figures::position).toList(),
                lens.kit().primary().model().opticDiameter(),
                plan.theatre().opening().flatMap(opening -> opening.size().map(size -> size.asMade())),
                lens.toric().map(toric -> toric.markedAxis()),
                lens.toric().map(toric -> incision));
    }

    private static Stream<Prediction> others(LensPlan lens) {
        return lens.predictions().stream().filter(each -> !each.chosen());
    }

    private static Millimetres position(Prediction prediction) {
        return prediction.view().eye().lensPosition();
    }
}
