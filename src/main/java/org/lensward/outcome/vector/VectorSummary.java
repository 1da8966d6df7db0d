package org.lensward.outcome.vector;

import org.lensward.optics.toric.Astigmatism;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;

/**
 * Many astigmatisms in the double-angle plane (Holladay, Moran and Kezirian, J Cataract Refract Surg 2001;27:61; Abulafia et al.,
 * 2018;44:1169; values from memory).
 *
 * @param eyes at least three
 * @param centroid their mean vector
 * @param meanMagnitude mean of their sizes, which is not the size of their mean
 * @param varianceX of x about the centroid, D squared, eyes - 1 degrees of freedom
 * @param covariance of x and y
 * @param varianceY of y
 * @param ofEyes where 95 % of single eyes are to be expected
 * @param ofCentroid where the centroid lies with 95 % confidence
 */
public record VectorSummary(
        long eyes,
        Astigmatism centroid,
        Dioptres meanMagnitude,
        PureNumber varianceX,
        PureNumber covariance,
        PureNumber varianceY,
        Ellipse ofEyes,
        Ellipse ofCentroid) {

    /**
     * An ellipse about the centroid.
     *
     * @param major half its longer axis
     * @param minor half its shorter axis
     * @param tilt of the longer axis from the x axis of the double-angle plane, anticlockwise, 0 to below 180; halve it for a meridian
     */
    public record Ellipse(Dioptres major, Dioptres minor, Degrees tilt) {}
}
