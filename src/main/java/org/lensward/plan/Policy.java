package org.lensward.plan;

import org.lensward.check.CheckPolicy;
import org.lensward.eye.BiometryPolicy;
import org.lensward.lens.LensPolicy;
import org.lensward.lens.stock.StockPolicy;
import org.lensward.risk.RiskPolicy;
import org.lensward.risk.opening.OpeningPolicy;
import org.lensward.risk.preparation.PreparationPolicy;

/**
 * The hospital's thresholds and preferences. A plan records the version it was made under.
 *
 * @param version changes whenever anything in the policy does
 * @param biometry when measurements are repeated or refused
 * @param lens how the lens is chosen
 * @param risk how risks are computed and named
 * @param opening how the capsule is opened
 * @param preparation how eye and person are prepared
 * @param stock how the lens bank is kept
 * @param check how lenses are checked
 */
public record Policy(
        String version,
        BiometryPolicy biometry,
        LensPolicy lens,
        RiskPolicy risk,
        OpeningPolicy opening,
        PreparationPolicy preparation,
        StockPolicy stock,
        CheckPolicy check) {

    public Policy {
        if (version.isBlank()) {
            throw new IllegalArgumentException("A policy has a version");
        }
    }
}
