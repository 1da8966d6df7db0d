package org.lensward.outcome;

import java.util.Map;
import java.util.Optional;
import org.lensward.eye.Biometry;
import org.lensward.lens.MeasuredEye;
import org.lensward.optics.EyeShape;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;

/** An operated eye that counts for the refractive audit, or the reason it does not. */
public sealed interface Admitted {

    /** The eye. */
    OperatedEye eye();

    /**
     * It counts.
     *
     * @param eye the eye
     * @param biometry used for its plan
     * @param refraction that counts
     * @param seen how each formula saw it with the constants used at the time; formulas without a prediction are absent; never empty
     */
    record Counted(OperatedEye eye, Biometry biometry, ChosenRefraction refraction, Map<FormulaName, ThinEye> seen)
            implements Admitted {

        public EyeShape shape() {
            return new MeasuredEye(biometry, Optional.empty()).shape();
        }

        /** How each formula sees it with other constants than those used at the time. */
        public Map<FormulaName, ThinEye> seenWith(LensConstants constants) {
            return Admission.see(biometry, constants);
        }

        /** Achieved minus predicted spherical equivalent for the lens implanted; the formula must have seen the eye. */
        public Dioptres error(FormulaName formula) {
            ThinEye thin = seen.get(formula);
            if (thin == null) {
                throw new IllegalArgumentException(formula + " has no prediction for this eye");
            }
            return refraction.equivalent().minus(thin.refraction(eye.lens().power()));
        }
    }

    /**
     * It does not.
     *
     * @param eye the eye
     * @param reason the first that holds
     */
    record Excluded(OperatedEye eye, Exclusion reason) implements Admitted {}
}
