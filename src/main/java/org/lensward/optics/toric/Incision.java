package org.lensward.optics.toric;

import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/**
 * What a surgeon's incision does to a cornea on average: it flattens its own meridian and steepens the one across. Vectors add as in
 * Holladay, Moran and Kezirian, J Cataract Refract Surg 2001;27:61 (value from memory). The size is the surgeon's own centroid and
 * scatters from eye to eye; that scatter is not modelled.
 *
 * @param flattening surgically induced astigmatism, nought or more
 * @param meridian where the incision lies
 */
public record Incision(Dioptres flattening, Degrees meridian) {

    public Incision {
        if (flattening.value() < 0) {
            throw new IllegalArgumentException("An incision flattens by nought or more, not " + flattening);
        }
    }

    /** What the incision adds. */
    public Astigmatism effect() {
        return Astigmatism.of(flattening, Degrees.of(meridian.value() + 90));
    }

    /** The cornea after the incision. */
    public Astigmatism after(Astigmatism cornea) {
        return cornea.plus(effect());
    }
}
