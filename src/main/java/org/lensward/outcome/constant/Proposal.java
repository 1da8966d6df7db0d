package org.lensward.outcome.constant;

import java.time.LocalDate;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;

/**
 * Constants that the eyes suggest. A proposal changes nothing until a named clinician adopts it.
 *
 * <p>Each {@link LensConstants} here holds the constant of this formula alone.
 *
 * @param scope what it would hold for
 * @param formula whose constant it is
 * @param aim by which it was found
 * @param eyes it was learnt from
 * @param published the constant in use when the eyes were planned, from which the fit started
 * @param fitted what the eyes say by themselves
 * @param low lower end of the bootstrap interval of the fit, part by part
 * @param high upper end
 * @param confidence of that interval
 * @param proposed the fit drawn towards the published constant, the fewer the eyes the more
 * @param weight of the fit in what is proposed: 0 the published constant, 1 the fit
 * @param meanBefore mean prediction error with the published constant
 * @param deviationBefore standard deviation with the published constant
 * @param deviationAfter standard deviation with the fitted constant; of Haigis' three to first order in the distance of each lens from
 *     its place
 * @param enoughEyes whether the policy's least number was reached; adoption is refused where not
 */
public record Proposal(
        Scope scope,
        FormulaName formula,
        Aim aim,
        long eyes,
        LensConstants published,
        LensConstants fitted,
        LensConstants low,
        LensConstants high,
        Probability confidence,
        LensConstants proposed,
        Probability weight,
        Dioptres meanBefore,
        Dioptres deviationBefore,
        Dioptres deviationAfter,
        boolean enoughEyes) {

    /**
     * A clinician takes it on.
     *
     * @param clinician who answers for it
     * @param on the day
     * @param version of the hospital's constants from then on; another than before
     * @throws IllegalStateException where there are too few eyes
     */
    public Adoption adopt(String clinician, LocalDate on, String version) {
        if (!enoughEyes) {
            throw new IllegalStateException("Too few eyes to adopt a constant: " + eyes);
        }
        return new Adoption(this, clinician, on, version);
    }
}
