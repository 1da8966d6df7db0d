package org.lensward.lens;

import org.lensward.eye.Limit;
import org.lensward.optics.toric.Incision;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/**
 * What a surgeon's incision does to a cornea on average.
 *
 * @param flattening surgically induced astigmatism, nought or more
 * @param meridian where the incision lies
 */
public record SurgeonIncision(Limit<Dioptres> flattening, Limit<Degrees> meridian) {

    Incision incision() {
        return new Incision(flattening.value(), meridian.value());
    }
}
