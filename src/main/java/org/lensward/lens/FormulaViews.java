package org.lensward.lens;

import static org.lensward.finding.FindingCode.CONSTANT_CONVERTED;
import static org.lensward.finding.FindingCode.CONSTANT_MISSING;
import static org.lensward.finding.Severity.WITHHOLDS;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Biometry;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.optics.EyeShape;
import org.lensward.optics.Formula;
import org.lensward.optics.FormulaName;
import org.lensward.optics.Formulas;
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

    /** Sees the eye through all formulas; withheld where no formula can. */
    public static Outcome<FormulaViews> of(LensModel model, Biometry biometry) {
        Optional<LensConstants> published = model.constantsFor(biometry.method());
        if (published.isEmpty()) {
            return Outcome.withheld(Finding.of(CONSTANT_MISSING, model.evidence(), model.name(), biometry.method()));
        }
        LensConstants constants = published.get().completed();
        List<FormulaView> views = new ArrayList<>();
        List<Finding> found = new ArrayList<>();
        for (Formula formula : Formulas.all()) {
            if (!constants.has(formula.name())) {
                continue;
            }
            Outcome<ThinEye> seen = formula.see(
                    shape(biometry), constants, biometry.axialLength().evidence());
            seen.value().ifPresent(eye -> views.add(new FormulaView(formula.name(), eye, constants)));
            found.addAll(seen.findings());
            if (seen.value().isPresent() && constants.convertedFor(formula.name())) {
                found.add(Finding.of(CONSTANT_CONVERTED, model.evidence(), formula.name(), model.name()));
            }
        }
        return views.isEmpty()
                ? noView(model, biometry, found)
                : Outcome.ready(new FormulaViews(model, axialLength(biometry), views), found);
    }

    private static Outcome<FormulaViews> noView(LensModel model, Biometry biometry, List<Finding> found) {
        List<Finding> reasons = new ArrayList<>(found);
        if (reasons.stream().noneMatch(finding -> finding.severity() == WITHHOLDS)) {
            reasons.add(Finding.of(CONSTANT_MISSING, model.evidence(), model.name(), biometry.method()));
        }
        return Outcome.withheld(reasons);
    }

    static EyeShape shape(Biometry biometry) {
        return new EyeShape(
                axialLength(biometry),
                biometry.keratometry().value().meanRadius(),
                biometry.details().anteriorChamberDepth().map(Measured::value));
    }

    private static Millimetres axialLength(Biometry biometry) {
        return biometry.axialLength().value();
    }

    /** The view to choose the lens by: the first preferred formula with a constant of its own, else the first preferred at all. */
    public FormulaView trusted(LensPolicy policy) {
        List<FormulaName> preferred = policy.preferred(axialLength);
        return preferred.stream()
                .flatMap(name -> view(name).stream())
                .filter(view -> !view.constantConverted())
                .findFirst()
                .or(() ->
                        preferred.stream().flatMap(name -> view(name).stream()).findFirst())
                .orElse(all.get(0));
    }

    private Optional<FormulaView> view(FormulaName name) {
        return all.stream().filter(view -> view.formula() == name).findFirst();
    }
}
