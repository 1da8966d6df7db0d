package org.lensward.risk;

import java.util.Comparator;
import java.util.List;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * How likely the posterior capsule ruptures or vitreous is lost.
 *
 * @param probability for this eye; a figure of a 2009 series that each unit should recalibrate
 * @param oddsRatio the product of the factors, against the reference eye
 * @param factors what went into the product, strongest first
 * @param unknown what the record does not say; left out of the product, not taken as absent
 * @param recalibrated whether the probability stands on the unit's own rate
 */
public record RuptureRisk(
        Probability probability,
        PureNumber oddsRatio,
        List<RiskFactor> factors,
        List<String> unknown,
        boolean recalibrated) {

    public RuptureRisk {
        factors = factors.stream()
                .sorted(Comparator.comparing(RiskFactor::oddsRatio).reversed().thenComparing(RiskFactor::words))
                .toList();
        unknown = List.copyOf(unknown);
    }
}
