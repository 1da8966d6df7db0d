package org.lensward.lens;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.BeforeLaser;
import org.lensward.eye.Eye;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Measured;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.optics.CornealHistory;
import org.lensward.optics.DoubleK;
import org.lensward.optics.Formula;
import org.lensward.optics.Formulas;
import org.lensward.optics.LongEye;
import org.lensward.optics.LongEyeAdjustment;
import org.lensward.optics.PostLaserMethod;
import org.lensward.optics.PostLaserMethods;
import org.lensward.optics.Reshaping;
import org.lensward.quantity.Millimetres;

/** Which methods may compute this eye's lens: the published formulas, or those made for a cornea that was reshaped. */
public final class PlanningMethods {

    private PlanningMethods() {}

    /**
     * The methods in the order a plan lists them; withheld where none is made for this cornea.
     *
     * @param eye with its history
     * @param axialLength by which a long eye is told
     * @param adjustment for long eyes
     */
    public static Outcome<List<PlanningMethod>> of(Eye eye, Millimetres axialLength, LongEyeAdjustment adjustment) {
        return reshaping(eye)
                .map(reshaping -> afterLaser(reshaping, eye))
                .orElseGet(() -> Outcome.ready(standard(axialLength, adjustment)));
    }

    /** Why no method may be used for this cornea, whatever the lens; empty where one may. */
    public static List<Finding> refused(Eye eye) {
        return reshaping(eye)
                .map(reshaping -> afterLaser(reshaping, eye))
                .filter(methods -> methods.value().isEmpty())
                .map(Outcome::findings)
                .orElse(List.of());
    }

    /** Whether and how the cornea was reshaped. */
    public static Optional<Measured<Reshaping>> reshaping(Eye eye) {
        Optional<Entry> flattened = eye.history().affirmed(Sign.CORNEA_FLATTENED_BY_LASER);
        Optional<Entry> steepened = eye.history().affirmed(Sign.CORNEA_STEEPENED_BY_LASER);
        Optional<Entry> incised = eye.history().affirmed(Sign.CORNEA_INCISED);
        if (incised.isPresent()) {
            return Optional.of(new Measured<>(Reshaping.INCISED, incised.get().evidence()));
        }
        if (flattened.isPresent() && steepened.isPresent()) {
            return Optional.of(new Measured<>(Reshaping.UNKNOWN, steepened.get().evidence()));
        }
        return flattened
                .map(entry -> new Measured<>(Reshaping.FLATTENED_BY_LASER, entry.evidence()))
                .or(() -> steepened.map(entry -> new Measured<>(Reshaping.STEEPENED_BY_LASER, entry.evidence())))
                .or(() -> eye.history()
                        .affirmed(Sign.CORNEA_RESHAPED)
                        .map(entry -> new Measured<>(Reshaping.UNKNOWN, entry.evidence())));
    }

    private static List<PlanningMethod> standard(Millimetres axialLength, LongEyeAdjustment adjustment) {
        List<PlanningMethod> methods = new ArrayList<>();
        Formulas.all().forEach(formula -> methods.add(PlanningMethod.asPublished(formula)));
        for (Formula formula : Formulas.all()) {
            if (adjustment.adjust(formula.name(), axialLength).isPresent()) {
                methods.add(new PlanningMethod(
                        formula.name() + ", length adjusted (" + adjustment + ")",
                        new LongEye(formula, adjustment),
                        Variant.LONG_EYE,
                        Optional.empty()));
            }
        }
        return methods;
    }

    private static Outcome<List<PlanningMethod>> afterLaser(Measured<Reshaping> reshaping, Eye eye) {
        Optional<CornealHistory> before = eye.other().beforeLaser().map(PlanningMethods::history);
        Outcome<List<PostLaserMethod>> methods = PostLaserMethods.of(reshaping, before);
        return methods.then(all -> Outcome.ready(all.stream()
                .map(method -> new PlanningMethod(
                        method.words(),
                        method.formula(),
                        method.formula() instanceof DoubleK ? Variant.DOUBLE_K : Variant.AS_PUBLISHED,
                        Optional.of(method)))
                .toList()));
    }

    private static CornealHistory history(BeforeLaser before) {
        return new CornealHistory(
                before.power().value(),
                before.refraction().value(),
                before.refractionAfter().value());
    }
}
