package org.lensward.board.eye;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lensward.finding.Evidence;
import org.lensward.lens.KitLens;
import org.lensward.lens.KitRole;
import org.lensward.plan.LensPlan;
import org.lensward.plan.PowerRow;
import org.lensward.plan.Prediction;
import org.lensward.plan.ToricPlan;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;
import org.lensward.record.PlanKey;

/**
 * The lenses of a plan and what is predicted of them.
 *
 * @param primary the lens to implant
 * @param predicted what it is predicted to leave, with its 95 % interval
 * @param target aimed at
 * @param chances to land near the target
 * @param formulas one line for each, the chosen one first
 * @param scale both ends of the bars
 * @param neighbours powers around the choice, by the chosen formula
 * @param backUps the rest of the kit
 * @param toric cylinder, axis and what is left
 */
record LensPart(
        Lens primary,
        Shown predicted,
        Shown target,
        String chances,
        List<FormulaLine> formulas,
        Ends scale,
        List<Neighbour> neighbours,
        List<Lens> backUps,
        Optional<Toric> toric) {

    /**
     * One lens.
     *
     * @param role what it is for
     * @param model as the hospital calls it
     * @param modelName as the record refers to it
     * @param power with its request in the record
     * @param predicted what it leaves
     */
    record Lens(String role, Shown model, String modelName, Shown power, String predicted) {}

    /**
     * What one formula says.
     *
     * @param name of the formula
     * @param chosen whether the lens was chosen by it
     * @param predicted with its place in the record
     * @param interval the 95 % interval in words
     * @param forTarget the power that would meet the target exactly
     * @param position where it puts the lens
     * @param within the chance to land within half a dioptre
     * @param bar drawn
     */
    record FormulaLine(
            String name,
            boolean chosen,
            Shown predicted,
            String interval,
            String forTarget,
            String position,
            String within,
            String bar) {}

    /** Both ends of the scale that the bars share. */
    record Ends(String from, String to) {}

    /**
     * A power near the choice.
     *
     * @param power on the label
     * @param predicted what it would leave
     * @param chosen whether it is the planned one
     */
    record Neighbour(String power, String predicted, boolean chosen) {}

    /**
     * A toric lens.
     *
     * @param cylinder on the label
     * @param axis to lay the marks on
     * @param net the astigmatism to correct
     * @param residual what is left
     * @param turned what is left when it turns
     */
    record Toric(String cylinder, String axis, String net, String residual, List<String> turned) {}

    static LensPart of(LensPlan lens, Evidence target, PlanKey key) {
        Prediction chosen = lens.chosen();
        RefractionBar bar = RefractionBar.over(lens.predictions(), lens.target());
        return new LensPart(
                lens(lens.kit().primary(), key),
                Shown.of(signed(chosen.predicted()), stored(chosen, key)),
                Shown.of(lens.target().signed(), target),
                percent(chosen.uncertainty().withinHalf()) + " within 0.50 D, "
                        + percent(chosen.uncertainty().withinOne()) + " within 1.00 D of the target; improve first: "
                        + chosen.uncertainty().largest(),
                lens.predictions().stream()
                        .sorted(Comparator.comparing(each -> !each.chosen()))
                        .map(each -> line(each, bar, key))
                        .toList(),
                new Ends(signed(bar.from()), signed(bar.to())),
                chosen.table().stream().map(row -> neighbour(row, lens)).toList(),
                lens.kit().backUps().stream().map(each -> lens(each, key)).toList(),
                lens.toric().map(LensPart::toric));
    }

    private static Lens lens(KitLens lens, PlanKey key) {
        return new Lens(
                role(lens.role()),
                Shown.of(lens.model().name(), lens.model().evidence()),
                lens.model().evidence().resource(),
                Shown.of(
                        lens.power().signed(),
                        new Evidence("DeviceRequest/" + key.id(lens.role().code()), "", "parameter")),
                signed(lens.predicted()));
    }

    private static String role(KitRole role) {
        return switch (role) {
            case PRIMARY -> "to implant";
            case SPARE -> "spare, the same again";
            case SULCUS -> "for the sulcus";
            case ANTERIOR_CHAMBER -> "for the anterior chamber";
        };
    }

    private static Evidence stored(Prediction prediction, PlanKey key) {
        return new Evidence(
                "Observation/"
                        + key.id("predicted-" + prediction.view().method().code()),
                "",
                "valueQuantity");
    }

    private static FormulaLine line(Prediction prediction, RefractionBar bar, PlanKey key) {
        double half = RefractionBar.half(prediction);
        double middle = prediction.predicted().value();
        return new FormulaLine(
                prediction.view().method().words(),
                prediction.chosen(),
                Shown.of(signed(prediction.predicted()), stored(prediction, key)),
                signed(middle - half) + " to " + signed(middle + half),
                prediction.powerForTarget().signed(),
                prediction.view().eye().lensPosition().rounded(),
                percent(prediction.uncertainty().withinHalf()),
                bar.of(prediction));
    }

    private static Neighbour neighbour(PowerRow row, LensPlan lens) {
        return new Neighbour(
                row.power().signed(),
                signed(row.predicted()),
                row.power().equals(lens.kit().primary().power()));
    }

    private static Toric toric(ToricPlan toric) {
        return new Toric(
                toric.choice().lens().cylinder().rounded(),
                FrontView.whole(toric.markedAxis()),
                toric.net().magnitude().rounded() + ", steep at "
                        + FrontView.whole(toric.net().steepMeridian()),
                toric.choice().residual().toString(),
                toric.choice().rotations().stream()
                        .map(turn ->
                                turn.residual().cylinder().rounded() + " if turned by " + FrontView.whole(turn.by()))
                        .toList());
    }

    /** With its sign; nought has none. */
    private static String signed(Dioptres refraction) {
        return refraction.signed().replaceFirst("^-(0\\.00 )", "$1");
    }

    private static String percent(Probability chance) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * chance.value());
    }

    private static String signed(double dioptres) {
        return String.format(Locale.ROOT, "%+.2f", dioptres);
    }
}
