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
import org.lensward.eye.Biometry;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.finding.Severity;
import org.lensward.optics.FormulaName;
import org.lensward.optics.Formulas;
import org.lensward.optics.LensConstants;
import org.lensward.optics.ThinEye;
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
     * @param biometry of this eye
     * @param catalogue where the back-ups are found
     * @param target spherical equivalent at the spectacle plane
     */
    public Outcome<LensKit> plan(FormulaViews views, Biometry biometry, Catalogue catalogue, Dioptres target) {
        FormulaView trusted = views.trusted(policy);
        return lens(PRIMARY, views.model(), trusted.formula(), trusted.eye(), target)
                .then(primary -> {
                    List<KitLens> backUps = new ArrayList<>();
                    List<Finding> found = new ArrayList<>();
                    backUps.add(new KitLens(
                            SPARE, primary.model(), primary.power(), primary.predicted(), primary.formula()));
                    keep(sulcus(biometry, catalogue, target), "sulcus", biometry, backUps, found);
                    keep(anteriorChamber(biometry, catalogue, target), "anterior chamber", biometry, backUps, found);
                    return Outcome.ready(new LensKit(primary, backUps), found);
                });
    }

    /** The same model in the same eye, moved forward from the bag. */
    private Outcome<KitLens> sulcus(Biometry biometry, Catalogue catalogue, Dioptres target) {
        return houseLens(catalogue, LensSite.SULCUS, biometry.axialLength().evidence())
                .then(model -> FormulaViews.of(model, biometry))
                .then(views -> {
                    FormulaView trusted = views.trusted(policy);
                    Millimetres forward = policy.sulcusForward().value();
                    ThinEye eye = trusted.eye().withLensMoved(Millimetres.of(-forward.value()));
                    return lens(SULCUS, views.model(), trusted.formula(), eye, target);
                });
    }

    /** By the A-constant of the model itself, which already places it in the anterior chamber. */
    private Outcome<KitLens> anteriorChamber(Biometry biometry, Catalogue catalogue, Dioptres target) {
        Evidence evidence = biometry.axialLength().evidence();
        return houseLens(catalogue, LensSite.ANTERIOR_CHAMBER, evidence)
                .then(model -> model.constantsFor(biometry.method())
                        .filter(constants -> constants.has(FormulaName.SRK_T))
                        .map(constants -> inAnteriorChamber(model, biometry, constants, target))
                        .orElseGet(() -> Outcome.withheld(Finding.of(
                                FindingCode.CONSTANT_MISSING, model.evidence(), model.name(), biometry.method()))));
    }

    private Outcome<KitLens> inAnteriorChamber(
            LensModel model, Biometry biometry, LensConstants constants, Dioptres target) {
        return Formulas.named(FormulaName.SRK_T)
                .see(
                        FormulaViews.shape(biometry),
                        constants,
                        biometry.axialLength().evidence())
                .then(eye -> lens(ANTERIOR_CHAMBER, model, FormulaName.SRK_T, eye, target));
    }

    private Outcome<KitLens> lens(KitRole role, LensModel model, FormulaName formula, ThinEye eye, Dioptres target) {
        return PowerChoice.choose(model, eye, target, policy.side())
                .then(power -> Outcome.ready(new KitLens(role, model, power, eye.refraction(power), formula)));
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
            Outcome<KitLens> backUp, String site, Biometry biometry, List<KitLens> backUps, List<Finding> found) {
        Optional<KitLens> lens = backUp.value();
        if (lens.isPresent()) {
            backUps.add(lens.get());
            return;
        }
        String why = backUp.findings().stream()
                .filter(finding -> finding.severity() == Severity.WITHHOLDS)
                .map(finding -> finding.message().replaceFirst("\\.$", ""))
                .collect(Collectors.joining("; "));
        found.add(
                why.isEmpty()
                        ? backUp.findings().get(0)
                        : Finding.of(
                                BACK_UP_LENS_MISSING, biometry.axialLength().evidence(), site, why));
    }
}
