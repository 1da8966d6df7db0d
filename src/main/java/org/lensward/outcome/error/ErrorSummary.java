package org.lensward.outcome.error;

import java.util.List;
import org.lensward.optics.FormulaName;
import org.lensward.outcome.Interval;
import org.lensward.quantity.Dioptres;

/**
 * The prediction errors of one formula in one group of eyes: achieved minus predicted spherical equivalent at 12 mm, for the lens
 * implanted. The standard deviation stands first (Holladay et al., J Cataract Refract Surg 2021;47:65).
 *
 * @param formula that predicted
 * @param eyes counted; at least two
 * @param deviation standard deviation about the mean, with eyes - 1 degrees of freedom; the same before and after the mean is zeroed,
 *     because zeroing shifts all errors alike and the mean is estimated either way
 * @param deviationInterval of it, allowing for heavy tails
 * @param mean above nought where eyes end more hyperopic than predicted
 * @param raw the sizes of the errors as they are
 * @param zeroed the sizes after the mean error was taken off every one
 */
public record ErrorSummary(
        FormulaName formula,
        long eyes,
        Dioptres deviation,
        Interval<Dioptres> deviationInterval,
        Dioptres mean,
        Sizes raw,
        Sizes zeroed) {

    /**
     * How large errors are, whichever way.
     *
     * @param meanAbsolute mean absolute error
     * @param medianAbsolute median absolute error
     * @param within shares within each limit, ascending
     */
    public record Sizes(Dioptres meanAbsolute, Dioptres medianAbsolute, List<Within> within) {
        public Sizes {
            within = List.copyOf(within);
        }
    }
}
