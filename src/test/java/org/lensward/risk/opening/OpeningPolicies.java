package org.lensward.risk.opening;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Policies with one value changed. */
final class OpeningPolicies {

    private OpeningPolicies() {}

    static OpeningPolicy withoutLeastOverlap(OpeningPolicy policy) {
        Map<OpeningTechnique, TechniquePolicy> loose = new EnumMap<>(OpeningTechnique.class);
        policy.techniques()
                .forEach((technique, own) -> loose.put(
                        technique,
                        new TechniquePolicy(
                                own.atHand(),
                                own.preferred(),
                                Openings.millimetres(0),
                                own.decentration(),
                                own.contraction())));
        return of(policy, loose, policy.usualOrder(), policy.dye());
    }

    static OpeningPolicy of(
            OpeningPolicy policy,
            Map<OpeningTechnique, TechniquePolicy> techniques,
            List<OpeningTechnique> usualOrder,
            DyePolicy dye) {
        return new OpeningPolicy(
                policy.referenceOptic(),
                techniques,
                usualOrder,
                policy.pressureOrder(),
                policy.weakZonulesOrder(),
                policy.contraction(),
                policy.thinOverlap(),
                policy.smallest(),
                policy.pupilMargin(),
                policy.multifocalDecentration(),
                policy.toricDecentration(),
                dye);
    }
}
