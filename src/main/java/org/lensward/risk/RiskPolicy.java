package org.lensward.risk;

import org.lensward.eye.Limit;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * How risks are computed and when they are spoken of.
 *
 * @param ruptureBaseline capsule rupture in the reference eye: refit it to the unit's own rate
 * @param smallPupil a pupil that dilates less is small
 * @param largePupil a pupil that dilates at least so far is large; between the two it is medium
 * @param ruptureNotable from this odds ratio on, the risk is named in the plan
 */
public record RiskPolicy(
        Limit<Probability> ruptureBaseline,
        Limit<Millimetres> smallPupil,
        Limit<Millimetres> largePupil,
        Limit<PureNumber> ruptureNotable) {}
