package org.lensward.optics.toric;

import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/**
 * A lens whose power differs between meridians, as it lies in the eye.
 *
 * @param equivalent the mean of both principal powers, at the lens
 * @param cylinder their difference at the lens; nought for a spherical lens
 * @param axis the meridian of <em>least</em> lens power, which carries the marks and is laid on the steep meridian of the cornea
 *     (ISO 11979-2, value from memory)
 */
public record ToricLens(Dioptres equivalent, Dioptres cylinder, Degrees axis) {

    public ToricLens {
        if (cylinder.value() < 0) {
            throw new IllegalArgumentException("A toric lens is labelled with plus cylinder, not " + cylinder);
        }
    }

    /** The powers of its meridians. */
    public PowerMatrix matrix() {
        return PowerMatrix.of(equivalent, Astigmatism.NONE.minus(Astigmatism.of(cylinder, axis)));
    }

    /** The same lens turned anticlockwise in the eye. */
    public ToricLens rotated(Degrees by) {
        return new ToricLens(equivalent, cylinder, Degrees.of(axis.value() + by.value()));
    }
}
