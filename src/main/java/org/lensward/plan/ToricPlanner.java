package org.lensward.plan;

import java.util.Optional;
import org.lensward.eye.Keratometry;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.lens.FormulaView;
import org.lensward.lens.KitLens;
import org.lensward.lens.LensPolicy;
import org.lensward.lens.MeasuredEye;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.optics.toric.ToricChoice;
import org.lensward.optics.toric.ToricEye;

/** Chooses the cylinder of a toric model once its spherical equivalent is chosen. */
final class ToricPlanner {

    private final LensPolicy policy;

    ToricPlanner(LensPolicy policy) {
        this.policy = policy;
    }

    /** The toric part of the plan; empty for a model without cylinders, withheld where the axis would be a guess. */
    Outcome<Optional<ToricPlan>> plan(KitLens primary, FormulaView view, MeasuredEye measured, String surgeon) {
        if (!primary.model().isToric()) {
            return Outcome.ready(Optional.empty());
        }
        if (view.method().reported().isPresent()) {
            return Outcome.withheld(Finding.of(
                    FindingCode.TORIC_ON_RESHAPED_CORNEA, primary.model().evidence()));
        }
        Measured<Keratometry> cornea = measured.biometry().keratometry();
        return Astigmatism.measured(
                        new Measured<>(cornea.value(), cornea.evidence().at("component")))
                .then(anterior -> Outcome.ready(Optional.of(choose(primary, view, anterior, surgeon))));
    }

    private ToricPlan choose(KitLens primary, FormulaView view, Astigmatism anterior, String surgeon) {
        Astigmatism net =
                policy.incision(surgeon).after(policy.posteriorCornea().net(anterior));
        ToricEye eye = new ToricEye(view.eye(), net);
        return new ToricPlan(
                anterior,
                net,
                ToricChoice.of(
                        eye, primary.power().minus(view.oil()), primary.model().cylinders()));
    }
}
