package org.lensward.record.outcome;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.lensward.eye.Laterality;
import org.lensward.finding.Evidence;
import org.lensward.optics.EyeShape;
import org.lensward.optics.Formula;
import org.lensward.optics.FormulaName;
import org.lensward.optics.Formulas;
import org.lensward.optics.HaigisConstants;
import org.lensward.optics.LensConstants;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * An eye that nobody has: invented measurements, planned by the published formulas, and a refraction about as far from the prediction as
 * published series are (optics.md: 0.35 to 0.47 D). The same number and seed make the same eye.
 */
final class InventedEye {

    static final LensConstants CONSTANTS = constants(118.9, 1.74, 5.49, 0.22);

    /** What the invented surgeons' hands make of the lens: the constant that the refractions were made with. */
    static final double TRUE_A = 119.1;

    private static final Evidence NOWHERE = new Evidence("Observation/none", "", "");
    private static final LocalDate FIRST_DAY = LocalDate.of(2026, 1, 5);
    private static final double SCATTER = 0.38;

    final int number;
    final int person;
    final Laterality side;
    final int surgeon;
    final LocalDate day;
    final double length;
    final double flat;
    final double steep;
    final int axis;
    final double chamber;
    final double power;
    final Map<FormulaName, Double> predicted;
    final double sphere;
    final double cylinder;
    final int cylinderAxis;
    final boolean plusForm;
    final double opening;
    final double rupture;

    InventedEye(int number, long seed) {
        Random dice = new Random(seed * 1_000_003L + number);
        dice.nextInt();
        this.number = number;
        // Every fifth person has both eyes in the series.
        this.person = number % 6 == 5 ? number - 1 : number;
        this.side = number % 6 == 5 || number % 2 == 1 ? Laterality.LEFT : Laterality.RIGHT;
        this.surgeon = 1 + dice.nextInt(3);
        this.day = FIRST_DAY.plusDays(number % 6 == 5 ? 150 + number % 20 : number * 7L % 140);
        this.length = round(Math.min(29, Math.max(20.8, 23.6 + 1.15 * dice.nextGaussian())), 0.01);
        double mean = Math.min(47.5, Math.max(39.5, 43.6 + 1.4 * dice.nextGaussian()));
        double astigmatism = Math.min(2.2, Math.abs(0.8 * dice.nextGaussian()));
        this.flat = round(mean - astigmatism / 2, 0.01);
        this.steep = round(mean + astigmatism / 2, 0.01);
        this.axis = dice.nextInt(181);
        this.chamber = round(3.15 + 0.35 * Math.max(-2, Math.min(2, dice.nextGaussian())), 0.01);
        this.power = choose();
        this.predicted = predict(CONSTANTS, power);
        double achieved =
                predict(constants(TRUE_A, 1.74, 5.49, 0.22), power).getOrDefault(FormulaName.SRK_T, Double.NaN)
                        + 0.04 * (surgeon - 2)
                        + SCATTER * dice.nextGaussian();
        this.cylinder = round(Math.min(2.5, Math.abs(0.6 * dice.nextGaussian())), 0.25);
        this.cylinderAxis = dice.nextInt(180);
        this.sphere = round(achieved + cylinder / 2, 0.25);
        this.plusForm = dice.nextInt(4) == 0;
        this.opening = round(5.2 + 0.2 * dice.nextGaussian(), 0.01);
        this.rupture = round(Math.max(0.3, 0.9 + 0.8 * Math.abs(dice.nextGaussian())), 0.01);
    }

    private static LensConstants constants(double a, double surgeonFactor, double acd, double a0) {
        return LensConstants.published(
                Optional.of(PureNumber.of(a)),
                Optional.of(Millimetres.of(surgeonFactor)),
                Optional.of(Millimetres.of(acd)),
                Optional.of(new HaigisConstants(Millimetres.of(a0), PureNumber.of(0.234), PureNumber.of(0.168))));
    }

    private double choose() {
        double best = 6;
        for (double each = 6; each <= 34; each += 0.5) {
            double left = predict(CONSTANTS, each).getOrDefault(FormulaName.SRK_T, Double.NaN) + 0.25;
            double before = predict(CONSTANTS, best).getOrDefault(FormulaName.SRK_T, Double.NaN) + 0.25;
            best = Math.abs(left) < Math.abs(before) ? each : best;
        }
        return best;
    }

    private Map<FormulaName, Double> predict(LensConstants constants, double labelled) {
        double radius = 337.5 / ((flat + steep) / 2);
        EyeShape shape =
                new EyeShape(Millimetres.of(length), Millimetres.of(radius), Optional.of(Millimetres.of(chamber)));
        Map<FormulaName, Double> all = new TreeMap<>();
        for (Formula formula : Formulas.all()) {
            formula.see(shape, constants, NOWHERE)
                    .value()
                    .ifPresent(eye -> all.put(
                            formula.name(),
                            eye.refraction(Dioptres.of(labelled)).value()));
        }
        return all;
    }

    private static double round(double value, double step) {
        return Math.rint(value / step) * step;
    }

    String key() {
        return String.format(Locale.ROOT, "%07d", number);
    }

    String patient() {
        return String.format(Locale.ROOT, "Patient/person-%07d", person);
    }
}
