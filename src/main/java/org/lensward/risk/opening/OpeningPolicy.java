package org.lensward.risk.opening;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.lensward.eye.Limit;
import org.lensward.eye.Sign;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Percent;

/**
 * How a hospital opens capsules. Every value is a default that it can replace.
 *
 * @param referenceOptic the optic that each technique's preferred diameter is given for; other optics keep the same rim
 * @param techniques one entry for each technique
 * @param usualOrder techniques in order of preference
 * @param pressureOrder likewise where the lens is swollen, or white and perhaps swollen
 * @param weakZonulesOrder likewise where the lens is weakly held
 * @param contraction share of the opening's area lost in eyes with that sign
 * @param thinOverlap less capsule over the optic's edge is spoken of
 * @param smallest a smaller opening, as made, is apt to contract
 * @param pupilMargin by how much a docked laser needs the pupil wider than the opening
 * @param multifocalDecentration an opening further off centre puts a multifocal or extended-focus lens in doubt
 * @param toricDecentration likewise a toric lens
 * @param dye the dyes
 */
public record OpeningPolicy(
        Limit<Millimetres> referenceOptic,
        Map<OpeningTechnique, TechniquePolicy> techniques,
        List<OpeningTechnique> usualOrder,
        List<OpeningTechnique> pressureOrder,
        List<OpeningTechnique> weakZonulesOrder,
        Map<Sign, Limit<Percent>> contraction,
        Limit<Millimetres> thinOverlap,
        Limit<Millimetres> smallest,
        Limit<Millimetres> pupilMargin,
        Limit<Millimetres> multifocalDecentration,
        Limit<Millimetres> toricDecentration,
        DyePolicy dye) {

    public OpeningPolicy {
        techniques = Map.copyOf(techniques);
        usualOrder = List.copyOf(usualOrder);
        pressureOrder = List.copyOf(pressureOrder);
        weakZonulesOrder = List.copyOf(weakZonulesOrder);
        contraction = Map.copyOf(contraction);
        for (OpeningTechnique each : OpeningTechnique.values()) {
            if (!techniques.containsKey(each)) {
                throw new IllegalArgumentException("The policy says nothing of the technique " + each.code());
            }
        }
        contraction.values().forEach(OpeningPolicy::requireShare);
    }

    /** What the hospital says of that technique. */
    public TechniquePolicy of(OpeningTechnique technique) {
        return Objects.requireNonNull(techniques.get(technique));
    }

    static void requireShare(Limit<Percent> contraction) {
        if (contraction.value().value() >= 100) {
            throw new IllegalArgumentException("An opening that loses " + contraction.value() + " of its area closes");
        }
    }
}
