package org.lensward.risk.preparation;

import java.util.List;
import org.lensward.eye.Sign;

/** A cornea that may not clear again. */
final class EndotheliumCare implements Step {

    private static final String SOURCE =
            "mean cell loss by density below 1000, 1000 to 2000, above 2000 /mm2: 19.9, 28.9,"
                    + " 15.0 %: Chen et al., J Clin Med 2021;10:2270 (abstract read); measures: common practice, no source";

    private final FrontPolicy policy;

    EndotheliumCare(FrontPolicy policy) {
        this.policy = policy;
    }

    @Override
    public void write(Sheet sheet) {
        Facts facts = sheet.facts();
        Draft draft = new Draft(Topic.ENDOTHELIUM)
                .below("endothelial density", facts.examination().endothelialDensity(), policy.fewCells())
                .above("central corneal thickness", facts.examination().cornealThickness(), policy.thickCornea())
                .signs(facts, List.of(Sign.CORNEA_GUTTATA, Sign.CORNEAL_GRAFT))
                .below("anterior chamber depth", facts.chamberDepth(), policy.shallowChamber());
        String agent = sheet.agentWords(Purpose.DISPERSIVE_VISCOELASTIC, draft);
        sheet.add(
                draft,
                "Coat the endothelium, again before each quarter: " + agent
                        + "; low energy, far from the cornea; warn of a later graft.",
                SOURCE);
    }
}
