package org.lensward.risk;

import org.lensward.finding.Evidence;
import org.lensward.quantity.PureNumber;

/**
 * One fact that multiplied the odds.
 *
 * @param words what it is, such as "white or brown lens"
 * @param oddsRatio by how much it multiplied them
 * @param evidence which fact of which resource
 */
public record RiskFactor(String words, PureNumber oddsRatio, Evidence evidence) {}
