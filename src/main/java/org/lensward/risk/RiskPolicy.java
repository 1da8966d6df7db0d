package org.lensward.risk;

import org.lensward.eye.Limit;
import org.lensward.quantity.CellsPerSquareMillimetre;
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
 * @param raisedPressure above it the pressure inside the eye is raised
 * @param highPressure above it the pressure is lowered before anything else
 * @param sparseEndothelium below it the endothelium is sparse
 * @param thickCornea above it the cornea may be failing
 * @param shallowChamber below it the anterior chamber is shallow
 * @param needleLength above this axial length a sharp needle behind the eye is a hazard
 */
public record RiskPolicy(
        Limit<Probability> ruptureBaseline,
        Limit<Probability> ruptureObserved,
        Limit<Probability> ruptureExpected,
        Limit<Millimetres> smallPupil,
        Limit<Millimetres> largePupil,
        Limit<PureNumber> ruptureNotable,
        Limit<MillimetresOfMercury> raisedPressure,
        Limit<MillimetresOfMercury> highPressure,
        Limit<CellsPerSquareMillimetre> sparseEndothelium,
        Limit<Millimetres> thickCornea,
        Limit<Millimetres> shallowChamber,
        Limit<Millimetres> needleLength) {

    /** Whether the unit has put its own figures in. */
    public boolean isRecalibrated() {
        return ruptureObserved.value().compareTo(ruptureExpected.value()) != 0;
    }
}
