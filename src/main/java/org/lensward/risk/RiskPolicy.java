package org.lensward.risk;

import org.lensward.eye.Limit;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.MillimetresOfMercury;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * How risks are computed and when they are spoken of.
 *
 * @param ruptureBaseline capsule rupture in the reference eye, as the model was published
 * @param ruptureObserved the unit's own rate of rupture over a known list of operations
 * @param ruptureExpected what the model expected over the same operations; the same as observed where the unit has not counted yet
 * @param smallPupil a pupil that dilates less is small
 * @param largePupil a pupil that dilates at least so far is large; between the two it is medium
 * @param ruptureNotable from this odds ratio on, the risk is named in the plan
 * @param highPressure above it the pressure is lowered before anything else
 */
public record RiskPolicy(
        Limit<Probability> ruptureBaseline,
        Limit<Probability> ruptureObserved,
        Limit<Probability> ruptureExpected,
        Limit<Millimetres> smallPupil,
        Limit<Millimetres> largePupil,
        Limit<PureNumber> ruptureNotable,
        Limit<MillimetresOfMercury> highPressure) {

    /** Whether the unit has put its own figures in. */
    public boolean isRecalibrated() {
        return ruptureObserved.value().compareTo(ruptureExpected.value()) != 0;
    }
}
