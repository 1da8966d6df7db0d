package org.lensward.board.eye;

import java.util.List;
import java.util.Locale;
import org.lensward.finding.Evidence;
import org.lensward.record.PlanKey;
import org.lensward.risk.RiskFactor;
import org.lensward.risk.RuptureRisk;

/**
 * The chance that the capsule ruptures, and what it is made of.
 *
 * @param probability with its place in the record
 * @param factors each with its odds ratio, strongest first
 * @param unknown what the record does not say
 * @param caveat what the figure rests on
 */
record RiskPart(Shown probability, List<Shown> factors, List<String> unknown, String caveat) {

    static RiskPart of(RuptureRisk risk, PlanKey key) {
        return new RiskPart(
                Shown.of(
                        String.format(
                                Locale.ROOT, "%.1f %%", 100 * risk.probability().value()),
                        new Evidence("RiskAssessment/" + key.id("capsule-rupture"), "", "prediction")),
                risk.factors().stream().map(RiskPart::factor).toList(),
                risk.unknown(),
                risk.recalibrated()
                        ? "On this unit's own rate."
                        : "On a published series of 2009, not on this unit's own rate: rates have fallen since.");
    }

    private static Shown factor(RiskFactor factor) {
        return Shown.of(
                factor.words() + " x "
                        + String.format(Locale.ROOT, "%.2f", factor.oddsRatio().value()),
                factor.evidence());
    }
}
