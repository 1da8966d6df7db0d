package org.lensward.risk;

import org.lensward.eye.Limit;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * How risks are computed and when they are spoken of.
 *
 * @param ruptureBaseline capsule rupture in the reference eye: refit it to the unit's own rate
 * @param ruptureNotable from this odds ratio on, the risk is named in the plan
 */
public record RiskPolicy(Limit<Probability> ruptureBaseline, Limit<PureNumber> ruptureNotable) {}
