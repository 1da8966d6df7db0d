package org.lensward.plan;

import static org.lensward.finding.FindingCode.ADDED_LENS;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Biometry;
import org.lensward.eye.Eye;
import org.lensward.eye.Keratometry;
import org.lensward.eye.Measured;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.lens.Catalogue;
import org.lensward.lens.FormulaView;
import org.lensward.lens.FormulaViews;
import org.lensward.lens.LensModel;
import org.lensward.lens.LensPolicy;
import org.lensward.lens.LensSite;
import org.lensward.lens.MeasuredEye;
import org.lensward.lens.PlanningMethods;
import org.lensward.optics.AddedLens;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * What a second lens would have to be in an eye whose own lens is out, from its refraction alone. A note for the surgeon's own plan: the
 * plan stays withheld.
 */
final class AddedLensNotes {

    private final LensPolicy policy;

    AddedLensNotes(LensPolicy policy) {
        this.policy = policy;
    }

    /** One note for the sulcus and one for the anterior chamber, as far as the catalogue and the record allow. */
    List<Finding> of(Eye eye, Catalogue catalogue, Dioptres target) {
        boolean lensOut = eye.history().affirmed(Sign.APHAKIA).isPresent()
                || eye.history().affirmed(Sign.PSEUDOPHAKIA).isPresent();
        Optional<Measured<Dioptres>> refraction = eye.other().refraction();
        if (!lensOut || refraction.isEmpty() || eye.biometry().isEmpty()) {
            return List.of();
        }
        return Stream.of(LensSite.SULCUS, LensSite.ANTERIOR_CHAMBER)
                .flatMap(site -> catalogue.houseLenses(site).stream().limit(1))
                .flatMap(model -> note(eye, eye.biometry().get(), model, refraction.get(), target).stream())
                .toList();
    }

    private Optional<Finding> note(
            Eye eye, Biometry biometry, LensModel model, Measured<Dioptres> refraction, Dioptres target) {
        Keratometry cornea = biometry.keratometry().value();
        return position(eye, biometry, model).map(position -> {
            Dioptres net = AddedLens.netPower(cornea.meanPower());
            Dioptres power = new AddedLens(net, position, ThinEye.VERTEX_DISTANCE).power(refraction.value(), target);
            return Finding.of(
                    ADDED_LENS,
                    refraction.evidence(),
                    refraction.value().signed(),
                    model.name(),
                    model.site(),
                    power.rounded(),
                    target.signed());
        });
    }

    private Optional<Millimetres> position(Eye eye, Biometry biometry, LensModel model) {
        MeasuredEye measured = new MeasuredEye(biometry, Optional.empty());
        Millimetres forward =
                model.site() == LensSite.SULCUS ? policy.sulcusForward().value() : Millimetres.of(0);
        return PlanningMethods.of(eye, biometry.axialLength().value(), policy.longEyeAdjustment())
                .then(methods -> FormulaViews.of(model, measured, methods))
                .value()
                .flatMap(views -> trusted(views, model.site()))
                .map(view -> view.eye().lensPosition().minus(forward));
    }

    /** A converted constant does not place a lens in the anterior chamber. */
    private Optional<FormulaView> trusted(FormulaViews views, LensSite site) {
        return site == LensSite.ANTERIOR_CHAMBER
                ? views.trustedByItsOwnConstant(policy)
                : Optional.of(views.trusted(policy));
    }
}
