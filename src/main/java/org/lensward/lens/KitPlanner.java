package org.lensward.lens;

import static org.lensward.finding.FindingCode.BACK_UP_LENS_MISSING;
import static org.lensward.lens.KitRole.ANTERIOR_CHAMBER;
import static org.lensward.lens.KitRole.PRIMARY;
import static org.lensward.lens.KitRole.SPARE;
import static org.lensward.lens.KitRole.SULCUS;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.finding.Severity;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/** Chooses the kit of one eye: the primary lens, its spare, and what to fall back on if the capsule fails. */
public final class KitPlanner {

    private final LensPolicy policy;

    public KitPlanner(LensPolicy policy) {
        this.policy = policy;
    }

    /**
     * The kit, or why there is no primary lens. A back-up that cannot be planned is a finding, not a refusal.
     *
     * @param views the primary model in this eye
     * @param measured this eye
     * @param catalogue where the back-ups are found
     * @param target spherical equivalent at the spectacle plane
     */
    public Outcome<LensKit> plan(FormulaViews views, MeasuredEye measured, Catalogue catalogue, Dioptres target) {
        List<PlanningMethod> methods =
                views.all().stream().map(FormulaView::method).toList();
        Evidence evidence = measured.biometry().axialLength().evidence();
        return lens(PRIMARY, views.model(), views.trusted(policy), target).then(primary -> {
            List<KitLens> backUps = new ArrayList<>();
            List<Finding> found = new ArrayList<>();
            backUps.add(primary.as(SPARE));
            Outcome<KitLens> sulcus = houseLens(catalogue, LensSite.SULCUS, evidence)
                    .then(model -> FormulaViews.of(model, measured, methods))
                    .then(seen -> inSulcus(seen, target));
            keep(sulcus, "sulcus", evidence, backUps, found);
            Outcome<KitLens> chamber = houseLens(catalogue, LensSite.ANTERIOR_CHAMBER, evidence)
                    .then(model -> FormulaViews.of(model, measured, methods))
                    .then(seen -> inAnteriorChamber(seen, measured, target));
            keep(chamber, "anterior chamber", evidence, backUps, found);
            return Outcome.ready(new LensKit(primary, backUps), found);
        });
    }

    /** The same model in the same eye, moved forward from the bag. */
    private Outcome<KitLens> inSulcus(FormulaViews seen, Dioptres target) {
        Millimetres forward = policy.sulcusForward().value();
        FormulaView moved = seen.trusted(policy).withLensMoved(Millimetres.of(-forward.value()));
        return lens(SULCUS, seen.model(), moved, target);
    }

    /** By a constant of the model's own, which already places it in the anterior chamber; a converted one would not. */
    private Outcome<KitLens> inAnteriorChamber(FormulaViews seen, MeasuredEye measured, Dioptres target) {
        return seen.trustedByItsOwnConstant(policy)
                .map(view -> lens(ANTERIOR_CHAMBER, seen.model(), view, target))
                .orElseGet(() -> Outcome.withheld(Finding.of(
                        FindingCode.CONSTANT_MISSING,
                        seen.model().evidence().at("property"),
                        seen.model().name(),
                        measured.biometry().method())));
    }

    private Outcome<KitLens> lens(KitRole role, LensModel model, FormulaView view, Dioptres target) {
        return PowerChoice.choose(model, view, target, policy.side())
                .then(power -> Outcome.ready(new KitLens(role, model, power, view.refraction(power), view.method())));
    }

    private static Outcome<LensModel> houseLens(Catalogue catalogue, LensSite site, Evidence evidence) {
        List<LensModel> offered = catalogue.houseLenses(site);
        return offered.size() == 1
                ? Outcome.ready(offered.get(0))
                : Outcome.withheld(Finding.of(
                        BACK_UP_LENS_MISSING,
                        evidence,
                        site,
                        "the catalogue offers " + offered.size() + " house lenses"));
    }

    private static void keep(
            Outcome<KitLens> backUp, String site, Evidence evidence, List<KitLens> backUps, List<Finding> found) {
        Optional<KitLens> lens = backUp.value();
        if (lens.isPresent()) {
            backUps.add(lens.get());
            return;
        }
        String why = backUp.findings().stream()
                .filter(finding -> finding.severity() == Severity.WITHHOLDS)
                .map(finding -> finding.message().replaceFirst("\\.$", ""))
                .collect(Collectors.joining("; "));
        found.add(why.isEmpty() ? backUp.findings().get(0) : Finding.of(BACK_UP_LENS_MISSING, evidence, site, why));
    }
}
