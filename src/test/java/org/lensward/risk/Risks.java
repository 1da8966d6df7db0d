package org.lensward.risk;

import static org.lensward.eye.Policies.limit;

import org.lensward.quantity.Millimetres;
import org.lensward.quantity.MillimetresOfMercury;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/** The risk policy that tests are made with. */
public final class Risks {

    private static final String COMMON = "common practice, no source";

    private Risks() {}

    public static RiskPolicy policy() {
        return new RiskPolicy(
                limit(Probability.of(0.0075), "least predicted risk in Narendran et al., Eye 2009;23:31-37"),
                limit(Probability.of(0.0192), "overall rate in Narendran et al., Eye 2009;23:31-37"),
                limit(Probability.of(0.0192), "the same: not recalibrated"),
                limit(Millimetres.of(5), COMMON),
                limit(Millimetres.of(7), COMMON),
                limit(PureNumber.of(2), COMMON),
                limit(MillimetresOfMercury.of(30), COMMON));
    }

    /** The same for a unit that has counted its own ruptures. */
    public static RiskPolicy recalibrated(double observed, double expected) {
        RiskPolicy policy = policy();
        return new RiskPolicy(
                policy.ruptureBaseline(),
                limit(Probability.of(observed), "the unit's own"),
                limit(Probability.of(expected), "the unit's own"),
                policy.smallPupil(),
                policy.largePupil(),
                policy.ruptureNotable(),
                policy.highPressure());
    }
}
