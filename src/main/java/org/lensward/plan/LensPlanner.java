package org.lensward.plan;

import static org.lensward.finding.FindingCode.DEVICE_REPORTED;
import static org.lensward.finding.FindingCode.DEVICE_REPORT_DIFFERS;
import static org.lensward.finding.FindingCode.FORMULAS_DISAGREE;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Biometry;
import org.lensward.eye.BiometryMethod;
import org.lensward.eye.DeviceReport;
import org.lensward.eye.Eye;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.lens.Catalogue;
import org.lensward.lens.FormulaView;
import org.lensward.lens.FormulaViews;
import org.lensward.lens.KitPlanner;
import org.lensward.lens.LensKit;
import org.lensward.lens.LensModel;
import org.lensward.lens.LensPolicy;
import org.lensward.lens.MeasuredEye;
import org.lensward.lens.PlanningMethods;
import org.lensward.lens.Variant;
import org.lensward.optics.ResultGuards;
import org.lensward.optics.SecondEye;
import org.lensward.optics.length.ContactUltrasound;
import org.lensward.quantity.Dioptres;

/** Plans the lenses of one measured eye: methods, kit, predictions, cylinder, and what to look at again. */
final class LensPlanner {

    private final LensPolicy policy;
    private final KitPlanner kits;
    private final ToricPlanner torics;
    private final Predictions predictions = new Predictions();

    LensPlanner(LensPolicy policy) {
        this.policy = policy;
        this.kits = new KitPlanner(policy);
        this.torics = new ToricPlanner(policy);
    }

    /**
     * What a lens is planned for.
     *
     * @param eye the eye to be operated on
     * @param fellow the other one
     * @param measured its biometry, fit to compute with
     * @param target spherical equivalent aimed at, with where it stands
     * @param surgeon the surgeon, as the record refers to them; empty if unknown
     */
    record Task(Eye eye, Eye fellow, MeasuredEye measured, Measured<Dioptres> target, String surgeon) {

        Task with(MeasuredEye other) {
            return new Task(eye, fellow, other, target, surgeon);
        }
    }

    /** The lenses of this model for this eye. */
    Outcome<LensPlan> plan(LensModel model, Catalogue catalogue, Task booked) {
        return comparable(model, booked.measured()).then(measured -> {
            Task task = booked.with(measured);
            return PlanningMethods.of(
                            task.eye(), measured.biometry().axialLength().value(), policy.longEyeAdjustment())
                    .then(methods -> FormulaViews.of(model, measured, methods))
                    .then(views -> kits.plan(
                                    views, measured, catalogue, task.target().value())
                            .then(kit -> describe(views, kit, task)));
        });
    }

    /** A contact reading lengthened to what immersion would have read may borrow immersion's constants; nothing else may. */
    private static Outcome<MeasuredEye> comparable(LensModel model, MeasuredEye measured) {
        Biometry biometry = measured.biometry();
        boolean borrows = biometry.method() == BiometryMethod.CONTACT_ULTRASOUND
                && model.constantsFor(BiometryMethod.CONTACT_ULTRASOUND).isEmpty()
                && model.constantsFor(BiometryMethod.IMMERSION_ULTRASOUND).isPresent();
        return borrows
                ? ContactUltrasound.corrected(biometry.axialLength())
                        .then(length -> Outcome.ready(new MeasuredEye(
                                biometry.asImmersion(
                                        length, ContactUltrasound.spread().deviation()),
                                measured.oilStays())))
                : Outcome.ready(measured);
    }

    private Outcome<LensPlan> describe(FormulaViews views, LensKit kit, Task task) {
        FormulaView trusted = views.trusted(policy);
        Dioptres target = task.target().value();
        List<Prediction> all = predictions.of(views, kit, trusted, task.measured(), target);
        return torics.plan(kit.primary(), trusted, task.measured(), task.surgeon())
                .then(toric -> {
                    LensPlan plan = new LensPlan(target, task.measured().biometry(), kit, all, toric);
                    return Outcome.ready(plan, secondLooks(plan, task));
                });
    }

    private List<Finding> secondLooks(LensPlan plan, Task task) {
        List<Finding> found = new ArrayList<>();
        plan.chosen()
                .view()
                .method()
                .afterLaser()
                .flatMap(method -> PlanningMethods.reshaping(task.eye()).map(how -> method.named(how.evidence())))
                .ifPresent(found::add);
        Dioptres predicted = plan.kit().primary().predicted();
        disagreement(plan).ifPresent(found::add);
        ResultGuards.beyondTarget(predicted, task.target(), policy.beyondTarget())
                .ifPresent(found::add);
        task.fellow()
                .other()
                .refraction()
                .flatMap(other -> ResultGuards.anisometropia(predicted, other, policy.eyesApart()))
                .ifPresent(found::add);
        task.fellow()
                .surprise()
                .map(error -> new SecondEye(policy.secondEyeFraction())
                        .expected(predicted, error)
                        .findings())
                .ifPresent(found::addAll);
        task.eye().other().deviceReports().stream()
                .filter(report -> report.lens()
                        .equals(plan.kit().primary().model().evidence().resource()))
                .map(report -> compared(report, plan))
                .forEach(found::add);
        return found;
    }

    /** Converted constants would add a disagreement of their own; they are left out of it. */
    private Optional<Finding> disagreement(LensPlan plan) {
        DoubleSummaryStatistics spread = plan.predictions().stream()
                .filter(prediction -> !prediction.view().constantConverted())
                .filter(prediction -> !adjustedStands(prediction, plan))
                .mapToDouble(prediction -> prediction.predicted().value())
                .summaryStatistics();
        double apart = spread.getMax() - spread.getMin();
        Evidence evidence = plan.biometry().axialLength().evidence();
        return spread.getCount() > 1 && apart > policy.formulasApart().value().value()
                ? Optional.of(Finding.of(
                        FORMULAS_DISAGREE, evidence, Dioptres.of(apart).rounded()))
                : Optional.empty();
    }

    /** A long eye is argued about by the adjusted formulas, not by the same ones unadjusted. */
    private static boolean adjustedStands(Prediction prediction, LensPlan plan) {
        return prediction.view().method().variant() == Variant.AS_PUBLISHED
                && plan.predictions().stream()
                        .map(other -> other.view().method())
                        .anyMatch(other -> other.variant() == Variant.LONG_EYE
                                && other.name() == prediction.view().formula());
    }

    private Finding compared(DeviceReport report, LensPlan plan) {
        Dioptres ours = plan.chosen().powerForTarget();
        Dioptres theirs = report.power().value();
        Dioptres apart = theirs.distanceTo(ours);
        String model = plan.kit().primary().model().name();
        // Half a dioptre of refraction is about two thirds of a dioptre at the lens; the policy's limit is kept as it
        // stands.
        return apart.compareTo(policy.formulasApart().value()) > 0
                ? Finding.of(
                        DEVICE_REPORT_DIFFERS,
                        report.power().evidence(),
                        report.method(),
                        theirs.rounded(),
                        model,
                        apart.rounded())
                : Finding.of(
                        DEVICE_REPORTED,
                        report.power().evidence(),
                        report.method(),
                        theirs.rounded(),
                        model,
                        ours.rounded());
    }
}
