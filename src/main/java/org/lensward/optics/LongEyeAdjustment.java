package org.lensward.optics;

import java.util.Map;
import java.util.Optional;
import org.lensward.quantity.Millimetres;

/**
 * The length to give a formula in place of a long eye's measured one, so that it does not leave the eye hyperopic.
 *
 * <pre>
 * AL' = a AL + b     for AL above the paper's threshold
 * </pre>
 *
 * AL and b in mm, a of unit one. Coefficients are values from memory; the papers were not seen. Where a line would lengthen the eye
 * (SRK/T of 2011 below 25.57 mm) the measured length stays. Where a line is already shorter at its threshold the published length
 * would jump there; ours does not: over the last millimetre below the threshold the shortening grows linearly from nothing. From the
 * threshold up the published line is used as it is. That fade is ours, not the authors'.
 */
public enum LongEyeAdjustment {
    /** The measured length, whatever it is. */
    NONE("none", Map.of()),

    /** Wang, Shirayama, Ma, Kohnen and Koch, J Cataract Refract Surg 2011;37:2018-2027; one-centre regression, AL above 25 mm. */
    WANG_KOCH_2011(
            "Wang and Koch 2011",
            Map.of(
                    FormulaName.HOLLADAY_1, new Line(25, 0.8289, 4.2663),
                    FormulaName.SRK_T, new Line(25, 0.8544, 3.7222),
                    FormulaName.HOFFER_Q, new Line(25, 0.8530, 3.5794),
                    FormulaName.HAIGIS, new Line(25, 0.9286, 1.5620))),

    /** Wang and Koch, J Cataract Refract Surg 2018;44:1396-1397; two formulas only, from 26.5 and 27 mm. */
    WANG_KOCH_2018(
            "Wang and Koch 2018",
            Map.of(
                    FormulaName.HOLLADAY_1, new Line(26.5, 0.8170, 4.7013),
                    FormulaName.SRK_T, new Line(27, 0.8453, 4.0773)));

    private static final double FADE = 1;

    private final String words;
    private final Map<FormulaName, Line> lines;

    LongEyeAdjustment(String words, Map<FormulaName, Line> lines) {
        this.words = words;
        this.lines = lines;
    }

    /** The length to use, where this adjustment covers the formula and shortens the eye. */
    public Optional<Millimetres> adjust(FormulaName formula, Millimetres measured) {
        return Optional.ofNullable(lines.get(formula))
                .map(line -> line.adjust(measured.value()))
                .filter(adjusted -> adjusted < measured.value())
                .map(Millimetres::of);
    }

    /** The papers' threshold, where this adjustment covers the formula. */
    public Optional<Millimetres> threshold(FormulaName formula) {
        return Optional.ofNullable(lines.get(formula)).map(line -> Millimetres.of(line.threshold));
    }

    /** The paper's authors and year. */
    @Override
    public String toString() {
        return words;
    }

    private record Line(double threshold, double slope, double offset) {

        double adjust(double length) {
            if (length >= threshold) {
                return Math.min(length, slope * length + offset);
            }
            double step = Math.max(0, threshold - (slope * threshold + offset));
            return length - step * Math.max(0, (length - threshold + FADE) / FADE);
        }
    }
}
