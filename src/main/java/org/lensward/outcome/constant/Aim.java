package org.lensward.outcome.constant;

import java.util.Locale;

/** By what a constant is judged best. */
public enum Aim {
    /** The mean prediction error is nought. */
    ZERO_MEAN,
    /** The standard deviation of the prediction error is least. */
    LEAST_DEVIATION,
    /** The root mean square of the prediction error is least. */
    LEAST_SQUARES,
    /** Haigis' three: regression of the lens position that explains each refraction. */
    POSITION_REGRESSION;

    /** As the record carries it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
