package org.lensward.risk.named;

import static org.lensward.finding.FindingCode.CAPSULE_RUPTURE_LIKELIER;
import static org.lensward.finding.FindingCode.RISK_FACTORS_UNKNOWN;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.finding.Finding;
import org.lensward.risk.RiskFactor;
import org.lensward.risk.RiskPolicy;
import org.lensward.risk.RuptureRisk;
import org.lensward.risk.preparation.PreparationPolicy;

/** Every risk of one operation that the team names and prepares for, each with what it rests on. */
public final class EyeRisks {

    private final RiskPolicy policy;
    private final PreparationPolicy preparation;

    public EyeRisks(RiskPolicy policy, PreparationPolicy preparation) {
        this.policy = policy;
        this.preparation = preparation;
    }

    /**
     * Every risk found, in a fixed order.
     *
     * @param subject whose operation it is
     * @param rupture its capsule-rupture risk
     */
    public List<Finding> name(Subject subject, RuptureRisk rupture) {
        return Stream.of(
                        capsule(rupture),
                        unknown(subject, rupture),
                        new LensRisks(preparation.front()).name(subject),
                        new CorneaRisks(preparation.front()).name(subject),
                        RetinaRisks.name(subject),
                        new PressureRisks(policy, preparation.front()).name(subject),
                        new PersonRisks(preparation.anaesthetic()).name(subject),
                        Silences.name(subject))
                .flatMap(each -> each)
                .toList();
    }

    private Stream<Finding> capsule(RuptureRisk rupture) {
        if (rupture.oddsRatio().compareTo(policy.ruptureNotable().value()) < 0) {
            return Stream.empty();
        }
        String chief =
                rupture.factors().stream().limit(3).map(RiskFactor::words).collect(Collectors.joining(", "));
        return Stream.of(Finding.of(
                CAPSULE_RUPTURE_LIKELIER,
                rupture.factors().stream().map(RiskFactor::evidence).distinct().toList(),
                rupture.oddsRatio().value(),
                chief));
    }

    private static Stream<Finding> unknown(Subject subject, RuptureRisk rupture) {
        return rupture.unknown().isEmpty()
                ? Stream.empty()
                : Stream.of(Finding.of(
                        RISK_FACTORS_UNKNOWN, subject.person().evidence(), String.join(", ", rupture.unknown())));
    }
}
