package org.lensward.optics.accuracy;

import org.apache.commons.math3.special.Erf;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;

/** Where a normally distributed refraction lands. */
public final class Landing {

    private Landing() {}

    /**
     * The chance to end no further than this from the target.
     *
     * @param limit nought or more
     * @param offset predicted minus target
     * @param deviation one standard deviation about the prediction; above nought
     */
    public static Probability within(Dioptres limit, Dioptres offset, Dioptres deviation) {
        double scale = deviation.value() * Math.sqrt(2);
        double nearer = (-limit.value() - offset.value()) / scale;
        double further = (limit.value() - offset.value()) / scale;
        return Probability.of(Erf.erf(nearer, further) / 2);
    }
}
