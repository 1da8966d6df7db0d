package org.lensward.outcome;

import java.util.Collections;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.lensward.eye.Biometry;
import org.lensward.lens.LensSite;
import org.lensward.lens.MeasuredEye;
import org.lensward.optics.EyeShape;
import org.lensward.optics.Formula;
import org.lensward.optics.FormulaName;
import org.lensward.optics.Formulas;
import org.lensward.optics.LensConstants;
import org.lensward.optics.ThinEye;
import org.lensward.outcome.Admitted.Counted;
import org.lensward.outcome.Admitted.Excluded;
import org.lensward.outcome.RefractionChoice.Choice;

/**
 * Admits operated eyes to the refractive audit, one after the other, or says why not. It remembers one patient at a time, so the eyes
 * must come ordered by patient, and of one patient by day of surgery; other orders are refused.
 */
public final class Admission {

    private final OutcomePolicy policy;
    private final RefractionChoice choice;
    private @Nullable OperatedEye last;
    private final Set<String> seenBefore = new HashSet<>();
    private boolean patientCounts;

    public Admission(OutcomePolicy policy) {
        this.policy = policy;
        this.choice = new RefractionChoice(policy.refraction());
    }

    /**
     * Judges the next eye.
     *
     * @throws IllegalArgumentException if it comes out of order
     */
    public Admitted admit(OperatedEye eye) {
        turnTo(eye);
        boolean newOperation = seenBefore.add(eye.keys().operation());
        boolean newDay = seenBefore.add(eye.side() + " " + eye.operatedOn());
        if (!newOperation || !newDay) {
            return new Excluded(eye, Exclusion.DUPLICATE);
        }
        Optional<Exclusion> course = course(eye).or(() -> basis(eye));
        if (course.isPresent()) {
            return new Excluded(eye, course.get());
        }
        Biometry biometry = eye.before().biometry().orElseThrow();
        Map<FormulaName, ThinEye> seen = see(biometry, eye.before().constants().orElseThrow());
        if (seen.isEmpty()) {
            return new Excluded(eye, Exclusion.NO_PREDICTION);
        }
        Choice chosen = choice.choose(eye);
        if (chosen instanceof Choice.None none) {
            return new Excluded(eye, none.reason());
        }
        if (patientCounts && policy.eyes().onePerPatient()) {
            return new Excluded(eye, Exclusion.SECOND_EYE);
        }
        patientCounts = true;
        return new Counted(eye, biometry, ((Choice.Chosen) chosen).refraction(), seen);
    }

    private void turnTo(OperatedEye eye) {
        int order =
                last == null ? 1 : eye.keys().patient().compareTo(last.keys().patient());
        if (order < 0 || last != null && order == 0 && eye.operatedOn().isBefore(last.operatedOn())) {
            throw new IllegalArgumentException("Operated eyes come ordered by patient and by day of surgery");
        }
        if (order > 0) {
            seenBefore.clear();
            patientCounts = false;
        }
        last = eye;
    }

    private Optional<Exclusion> course(OperatedEye eye) {
        if (eye.lens().site().isEmpty()) {
            return Optional.of(Exclusion.SITE_NOT_TOLD);
        }
        if (eye.lens().site().get() != LensSite.CAPSULAR_BAG) {
            return Optional.of(Exclusion.NOT_IN_THE_BAG);
        }
        if (!eye.after().complicationsTold()) {
            return Optional.of(Exclusion.COMPLICATIONS_NOT_TOLD);
        }
        boolean complicated =
                !Collections.disjoint(eye.after().complications(), policy.eyes().disturbing());
        return complicated ? Optional.of(Exclusion.COMPLICATED) : Optional.empty();
    }

    private static Optional<Exclusion> basis(OperatedEye eye) {
        if (eye.before().biometry().isEmpty()) {
            return Optional.of(Exclusion.NO_BIOMETRY);
        }
        Biometry biometry = eye.before().biometry().get();
        if (biometry.eye() != eye.side()) {
            return Optional.of(Exclusion.BIOMETRY_OF_THE_OTHER_EYE);
        }
        if (biometry.measuredOn().isAfter(eye.operatedOn())) {
            return Optional.of(Exclusion.BIOMETRY_AFTER_SURGERY);
        }
        boolean known = eye.before().constants().filter(each -> !each.isEmpty()).isPresent();
        return known ? Optional.empty() : Optional.of(Exclusion.NO_CONSTANTS);
    }

    /** How every formula that has its constant sees the eye; formulas without an answer are absent. */
    static Map<FormulaName, ThinEye> see(Biometry biometry, LensConstants constants) {
        Map<FormulaName, ThinEye> seen = new EnumMap<>(FormulaName.class);
        EyeShape shape = new MeasuredEye(biometry, Optional.empty()).shape();
        for (Formula formula : Formulas.all()) {
            if (constants.has(formula.name())) {
                formula.see(shape, constants, biometry.axialLength().evidence())
                        .value()
                        .ifPresent(eye -> seen.put(formula.name(), eye));
            }
        }
        return Collections.unmodifiableMap(seen);
    }
}
