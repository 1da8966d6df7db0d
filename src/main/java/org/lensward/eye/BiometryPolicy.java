package org.lensward.eye;

import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * When biometry is repeated or refused. Every threshold is a default that a hospital can replace.
 *
 * @param shortestLength shorter eyes are measured again
 * @param longestLength longer eyes are measured again
 * @param flattestCornea flatter corneas are measured again
 * @param steepestCornea steeper corneas are measured again
 * @param highestAstigmatism more corneal astigmatism is measured again
 * @param toricAstigmatism from here on a toric lens is worth discussing
 * @param eyesApartInLength the most two eyes may differ in length
 * @param eyesApartInPower the most two corneas may differ in mean power
 * @param lengthScatter the most that axial length readings may scatter
 * @param cornealScatter the most that keratometer readings may scatter
 * @param softLensDays soft contact lenses are left out so long before the cornea is measured
 * @param rigidLensDays rigid ones so long
 * @param lengthSignal the least signal-to-noise ratio of the axial length
 * @param sameDayLength the most that two lengths of one day may differ before they contradict
 * @param sameDayPower the most that two mean corneal powers of one day may differ before they contradict
 * @param recheckMonths older biometry is repeated
 * @param expiryMonths older biometry is refused
 * @param fellowSurprise a fellow eye further from its prediction is explained first
 */
public record BiometryPolicy(
        Limit<Millimetres> shortestLength,
        Limit<Millimetres> longestLength,
        Limit<Dioptres> flattestCornea,
        Limit<Dioptres> steepestCornea,
        Limit<Dioptres> highestAstigmatism,
        Limit<Dioptres> toricAstigmatism,
        Limit<Millimetres> eyesApartInLength,
        Limit<Dioptres> eyesApartInPower,
        Limit<Millimetres> lengthScatter,
        Limit<Dioptres> cornealScatter,
        Limit<PureNumber> softLensDays,
        Limit<PureNumber> rigidLensDays,
        Limit<PureNumber> lengthSignal,
        Limit<Millimetres> sameDayLength,
        Limit<Dioptres> sameDayPower,
        Limit<PureNumber> recheckMonths,
        Limit<PureNumber> expiryMonths,
        Limit<Dioptres> fellowSurprise) {}
