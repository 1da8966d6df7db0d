package org.lensward.lens;

import static org.lensward.finding.FindingCode.CONSTANT_CONVERTED;
import static org.lensward.finding.FindingCode.CONSTANT_MISSING;
import static org.lensward.finding.Severity.WITHHOLDS;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Biometry;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Millimetres;

/**
 * One eye with one lens model in it, seen by every formula that has what it needs.
 *
 * @param model the lens
 * @param axialLength of the eye
 * @param all at least one view, in the order of {@link Formulas#all()}
 */
public record FormulaViews(LensModel model, Millimetres axialLength, List<FormulaView> all) {

    public FormulaViews {
        all = List.copyOf(all);
        if (all.isEmpty()) {
            throw new IllegalArgumentException("No formula sees this eye");
        }
    }

    /**
     * Sees the eye by all of these methods; withheld where none can.
     *
     * @param model the lens
     * @param measured the eye
     * @param methods that may be used for this eye
     */
    public static Outcome<FormulaViews> of(LensModel model, MeasuredEye measured, List<PlanningMethod> methods) {
        Biometry biometry = measured.biometry();
        Optional<LensConstants> published = model.constantsFor(biometry.method());
        if (published.isEmpty()) {
            return Outcome.withheld(
                    Finding.of(CONSTANT_MISSING, model.evidence().at("property"), model.name(), biometry.method()));
        }
        LensConstants constants = published.get().completed();
        List<FormulaView> views = new ArrayList<>();
        List<Finding> found = new ArrayList<>();
        for (PlanningMethod method : methods) {
            if (constants.has(method.name())) {
                see(method, constants, measured, views, found);
                reportConversion(model, method, constants, views, found);
            }
        }
        return views.isEmpty()
                ? noView(model, biometry, found)
                : Outcome.ready(new FormulaViews(model, axialLength(biometry), views), found);
    }

    private static void see(
            PlanningMethod method,
            LensConstants constants,
            MeasuredEye measured,
            List<FormulaView> views,
            List<Finding> found) {
        Evidence evidence = measured.biometry().axialLength().evidence();
        Outcome<ThinEye> seen = method.formula().see(measured.shape(), constants, evidence);
        found.addAll(seen.findings());
        seen.value().ifPresent(eye -> views.add(new FormulaView(method, eye, constants, measured.oil(eye, found))));
    }

    private static void reportConversion(
            LensModel model,
            PlanningMethod method,
            LensConstants constants,
            List<FormulaView> views,
            List<Finding> found) {
        boolean seen = views.stream().anyMatch(view -> view.method() == method);
        if (seen && method.variant() == Variant.AS_PUBLISHED && constants.convertedFor(method.name())) {
            found.add(Finding.of(CONSTANT_CONVERTED, model.evidence(), method.name(), model.name()));
        }
    }

    private static Outcome<FormulaViews> noView(LensModel model, Biometry biometry, List<Finding> found) {
        List<Finding> reasons = new ArrayList<>(found);
        if (reasons.stream().noneMatch(finding -> finding.severity() == WITHHOLDS)) {
            reasons.add(Finding.of(CONSTANT_MISSING, model.evidence().at("property"), model.name(), biometry.method()));
        }
        return Outcome.withheld(reasons);
    }

    private static Millimetres axialLength(Biometry biometry) {
        return biometry.axialLength().value();
    }

    /**
     * The view to choose the lens by. After laser the first there is with a constant of its own; else the first preferred formula with a constant of its own, told
     * the adjusted length where the eye is long, else the first preferred at all.
     */
    public FormulaView trusted(LensPolicy policy) {
        if (all.get(0).method().reported().isPresent()) {
            return all.stream()
                    .filter(view -> !view.constantConverted())
                    .findFirst()
                    .orElse(all.get(0));
        }
        List<FormulaView> preferred = policy.preferred(axialLength).stream()
                .flatMap(name -> views(name))
                .toList();
        return preferred.stream()
                .filter(view -> !view.constantConverted())
                .findFirst()
                .or(() -> preferred.stream().findFirst())
                .orElse(all.get(0));
    }

    /** The view to trust where a converted constant would put the lens in the wrong place; empty where every constant is converted. */
    public Optional<FormulaView> trustedByItsOwnConstant(LensPolicy policy) {
        List<FormulaView> own =
                all.stream().filter(view -> !view.constantConverted()).toList();
        return own.isEmpty()
                ? Optional.empty()
                : Optional.of(new FormulaViews(model, axialLength, own).trusted(policy));
    }

    /** The views by that formula, the adjusted one first. */
    private Stream<FormulaView> views(FormulaName name) {
        return all.stream()
                .filter(view -> view.formula() == name)
                .sorted(Comparator.comparing((FormulaView view) -> view.method().variant())
                        .reversed());
    }
}
