package org.lensward.outcome.error;

import org.lensward.outcome.Interval;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;

/**
 * How many eyes ended no further than this from their prediction.
 *
 * @param limit such as 0.50 D, inclusive
 * @param eyes that did
 * @param of all
 * @param interval exact, of the share (Clopper and Pearson, Biometrika 1934;26:404)
 */
public record Within(Dioptres limit, long eyes, long of, Interval<Probability> interval) {

    public Probability share() {
        return Probability.of((double) eyes / of);
    }
}
