package org.lensward.risk.opening;

import org.lensward.eye.Limit;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Percent;

/**
 * What a hospital says of one technique.
 *
 * @param atHand whether the hospital has it
 * @param preferred diameter of the opening as made, under the policy's reference optic
 * @param leastOverlap capsule over the optic's edge that the plan keeps at the expected decentration
 * @param decentration of the opening's centre that is to be expected
 * @param contraction share of the opening's area that is lost as an ordinary eye heals
 */
public record TechniquePolicy(
        boolean atHand,
        Limit<Millimetres> preferred,
        Limit<Millimetres> leastOverlap,
        Limit<Millimetres> decentration,
        Limit<Percent> contraction) {

    public TechniquePolicy {
        OpeningPolicy.requireShare(contraction);
    }
}
