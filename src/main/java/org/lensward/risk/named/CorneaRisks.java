package org.lensward.risk.named;

import static org.lensward.finding.FindingCode.ENDOTHELIUM_AT_RISK;

import java.util.Locale;
import java.util.stream.Stream;
import org.lensward.eye.Examination;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.quantity.CellsPerSquareMillimetre;
import org.lensward.risk.preparation.FrontPolicy;

/**
 * Risks of the cornea: its endothelium may not outlast the operation. Mean loss after phacoemulsification by the density before, from
 * 353 patients: below 1000 /mm2 19.9 %, 1000 to 2000 28.9 %, above 15.0 % (Chen et al., J Clin Med 2021;10:2270, abstract read).
 */
final class CorneaRisks {

    private final FrontPolicy policy;

    CorneaRisks(FrontPolicy policy) {
        this.policy = policy;
    }

    Stream<Finding> name(Subject subject) {
        Examination seen = subject.eye().examination();
        Grounds grounds = new Grounds();
        seen.endothelialDensity()
                .filter(density -> density.value().compareTo(policy.fewCells().value()) < 0)
                .ifPresent(density -> grounds.add(
                        String.format(
                                Locale.ROOT,
                                "%.0f cells/mm2, of which such eyes lost %s %% on average",
                                density.value().value(),
                                meanLoss(density.value())),
                        density.evidence()));
        seen.cornealThickness()
                .filter(thickness ->
                        thickness.value().compareTo(policy.thickCornea().value()) > 0)
                .ifPresent(thickness -> grounds.add(
                        String.format(
                                Locale.ROOT,
                                "cornea %.0f um thick",
                                thickness.value().value() * 1000),
                        thickness.evidence()));
        return grounds.add(subject.affirmed(Sign.CORNEA_GUTTATA)).name(ENDOTHELIUM_AT_RISK);
    }

    static String meanLoss(CellsPerSquareMillimetre before) {
        if (before.value() < 1000) {
            return "19.9";
        }
        return before.value() <= 2000 ? "28.9" : "15.0";
    }
}
