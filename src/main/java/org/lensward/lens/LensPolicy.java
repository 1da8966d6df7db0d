package org.lensward.lens;

import java.util.List;
import org.lensward.eye.Limit;
import org.lensward.optics.FormulaName;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * How a lens is chosen. Every value is a default that a hospital can replace.
 *
 * @param target the target refraction where none was recorded
 * @param side on which side of the target a labelled power may fall
 * @param shortEye below this axial length the formulas for short eyes come first
 * @param longEye above this axial length the formulas for long eyes come first
 * @param forShortEyes formulas in order of preference
 * @param forOtherEyes formulas in order of preference
 * @param forLongEyes formulas in order of preference
 * @param formulasApart more disagreement between formulas is a finding
 * @param sulcusForward how far in front of its place in the bag a lens sits in the sulcus
 */
public record LensPolicy(
        Limit<Dioptres> target,
        TargetSide side,
        Limit<Millimetres> shortEye,
        Limit<Millimetres> longEye,
        List<FormulaName> forShortEyes,
        List<FormulaName> forOtherEyes,
        List<FormulaName> forLongEyes,
        Limit<Dioptres> formulasApart,
        Limit<Millimetres> sulcusForward) {

    public LensPolicy {
        forShortEyes = List.copyOf(forShortEyes);
        forOtherEyes = List.copyOf(forOtherEyes);
        forLongEyes = List.copyOf(forLongEyes);
    }

    /** The formulas to trust for an eye of that length, best first. */
    public List<FormulaName> preferred(Millimetres axialLength) {
        if (axialLength.compareTo(shortEye.value()) < 0) {
            return forShortEyes;
        }
        return axialLength.compareTo(longEye.value()) > 0 ? forLongEyes : forOtherEyes;
    }
}
