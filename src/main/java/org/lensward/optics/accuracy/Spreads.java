package org.lensward.optics.accuracy;

import org.lensward.optics.Spread;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * How uncertain each thing is that a predicted refraction of one eye rests on: one standard deviation each.
 *
 * @param axialLength of the measured length
 * @param cornealPower of the mean corneal power
 * @param lensPosition of the predicted about the actual position, whatever it was predicted from
 * @param refraction of the refraction measured after the operation
 */
public record Spreads(
        Spread<Millimetres> axialLength,
        Spread<Dioptres> cornealPower,
        Spread<Millimetres> lensPosition,
        Spread<Dioptres> refraction) {

    /** The same with the scatter of this eye's own length readings, where that is the greater. */
    public Spreads withLengthScatter(Millimetres scatter) {
        if (scatter.compareTo(axialLength.deviation()) <= 0) {
            return this;
        }
        return new Spreads(
                new Spread<>(scatter, "the scatter of this eye's readings"), cornealPower, lensPosition, refraction);
    }
}
