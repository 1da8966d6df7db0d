package org.lensward.plan;

import org.lensward.check.Checks;
import org.lensward.eye.Policies;
import org.lensward.lens.LensPolicy;
import org.lensward.lens.Lenses;
import org.lensward.lens.TargetSide;
import org.lensward.lens.stock.Stocks;
import org.lensward.risk.Risks;
import org.lensward.risk.opening.Openings;
import org.lensward.risk.preparation.Preparations;

/** The hospital's whole policy that tests are made with. */
public final class WholePolicy {

    private WholePolicy() {}

    public static Policy standard() {
        return with(Lenses.policy(TargetSide.MYOPIC));
    }

    static Policy version(String version) {
        return of(version, Lenses.policy(TargetSide.MYOPIC));
    }

    static Policy with(LensPolicy lens) {
        return of("test-1", lens);
    }

    private static Policy of(String version, LensPolicy lens) {
        return new Policy(
                version,
                Policies.standard(),
                lens,
                Risks.policy(),
                Openings.policy(),
                Preparations.policy(),
                Stocks.policy(),
                Checks.policy());
    }
}
