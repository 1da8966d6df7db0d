package org.lensward.optics;

import java.util.List;
import java.util.Optional;
import org.lensward.quantity.Millimetres;

/**
 * Which formulas to prefer for an eye, by its length.
 *
 * @param bands ranges of length; the first that holds the eye counts
 */
public record FormulaChoice(List<FormulaBand> bands) {

    private static final String NICE = "NICE guideline NG77, cataracts in adults, 2017 (value from memory)";

    public FormulaChoice {
        bands = List.copyOf(bands);
    }

    /**
     * The bands of NICE NG77, where the biometer offers nothing newer: below 22.00 mm Haigis or Hoffer Q, to 26.00 mm SRK/T, above
     * Haigis or SRK/T. 26.00 mm itself belongs to the middle band.
     */
    public static FormulaChoice nice() {
        Millimetres aboveMiddle = Millimetres.of(Math.nextUp(26.0));
        return new FormulaChoice(List.of(
                new FormulaBand(
                        Millimetres.of(0), Millimetres.of(22), List.of(FormulaName.HAIGIS, FormulaName.HOFFER_Q), NICE),
                new FormulaBand(Millimetres.of(22), aboveMiddle, List.of(FormulaName.SRK_T), NICE),
                new FormulaBand(
                        aboveMiddle, Millimetres.of(100), List.of(FormulaName.HAIGIS, FormulaName.SRK_T), NICE)));
    }

    /** The band of this eye, where the policy has one. */
    public Optional<FormulaBand> band(Millimetres axialLength) {
        return bands.stream().filter(band -> band.holds(axialLength)).findFirst();
    }

    /** The first preferred formula that could see the eye. */
    public Optional<FormulaName> choose(Millimetres axialLength, List<FormulaName> available) {
        return band(axialLength).stream()
                .flatMap(band -> band.preferred().stream())
                .filter(available::contains)
                .findFirst();
    }
}
