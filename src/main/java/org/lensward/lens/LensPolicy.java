package org.lensward.lens;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.lensward.eye.Limit;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LongEyeAdjustment;
import org.lensward.optics.toric.Incision;
import org.lensward.optics.toric.PosteriorCornea;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

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
 * @param longEyeAdjustment the length a formula is told of a long eye
 * @param hyperopicTarget a target more hyperopic may have the wrong sign
 * @param beyondTarget a lens predicted to end further from the target is looked at again
 * @param eyesApart two eyes that end further apart are spoken of
 * @param suspectFlatCornea flatter corneas may have been reshaped without the record saying so
 * @param suspectSteepCornea steeper ones likewise
 * @param secondEyeFraction how much of the first eye's error to expect in the second
 * @param posteriorCornea how the back of the cornea enters a toric plan
 * @param incisions by surgeon, such as {@code Practitioner/s1}; {@code any} for everyone else
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
        Limit<Millimetres> sulcusForward,
        LongEyeAdjustment longEyeAdjustment,
        Limit<Dioptres> hyperopicTarget,
        Limit<Dioptres> beyondTarget,
        Limit<Dioptres> eyesApart,
        Limit<Dioptres> suspectFlatCornea,
        Limit<Dioptres> suspectSteepCornea,
        Limit<PureNumber> secondEyeFraction,
        PosteriorCornea posteriorCornea,
        Map<String, SurgeonIncision> incisions) {

    /** Whose incision counts where the surgeon has none of their own. */
    public static final String ANY_SURGEON = "any";

    public LensPolicy {
        forShortEyes = List.copyOf(forShortEyes);
        forOtherEyes = List.copyOf(forOtherEyes);
        forLongEyes = List.copyOf(forLongEyes);
        incisions = Map.copyOf(incisions);
        if (!incisions.containsKey(ANY_SURGEON)) {
            throw new IllegalArgumentException("The policy names no incision for '" + ANY_SURGEON + "' surgeon");
        }
    }

    /** The formulas to trust for an eye of that length, best first. */
    public List<FormulaName> preferred(Millimetres axialLength) {
        if (axialLength.compareTo(shortEye.value()) < 0) {
            return forShortEyes;
        }
        return axialLength.compareTo(longEye.value()) > 0 ? forLongEyes : forOtherEyes;
    }

    /** The incision of that surgeon. */
    public Incision incision(String surgeon) {
        return incisions
                .getOrDefault(surgeon, Objects.requireNonNull(incisions.get(ANY_SURGEON)))
                .incision();
    }
}
