package org.lensward.risk.preparation;

import java.util.List;
import org.lensward.eye.Limit;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * Which kinds of lens suit which eye.
 *
 * @param rules one for each kind that the hospital offers
 * @param toricAstigmatism corneal astigmatism from which a toric lens is worth its trouble
 * @param cornealScatter standard deviation of keratometer readings above which astigmatism is not steady
 * @param decentredOpening decentration of the capsule opening above which a lens that shares out the light is doubtful
 */
public record LensTypePolicy(
        List<LensTypeRule> rules,
        Limit<Dioptres> toricAstigmatism,
        Limit<Dioptres> cornealScatter,
        Limit<Millimetres> decentredOpening) {

    public LensTypePolicy {
        rules = List.copyOf(rules);
    }
}
