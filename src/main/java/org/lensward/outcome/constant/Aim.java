package org.lensward.outcome.constant;

import org.lensward.finding.Coded;

/** By what a constant is judged best. */
public enum Aim implements Coded {
    /** The mean prediction error is nought. */
    ZERO_MEAN,
    /** The standard deviation of the prediction error is least. */
    LEAST_DEVIATION,
    /** The root mean square of the prediction error is least. */
    LEAST_SQUARES,
    /** Haigis' three: regression of the lens position that explains each refraction. */
    POSITION_REGRESSION;
}
