package org.lensward.optics.accuracy;

import org.lensward.eye.BiometryMethod;
import org.lensward.optics.EyeShape;
import org.lensward.optics.Spread;
import org.lensward.optics.length.ContactUltrasound;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * How well things are measured, for any eye. Shipped defaults can be replaced by a hospital's own figures.
 *
 * @param opticalLength coefficient of variation of an axial length by light: the error grows with the eye
 * @param immersionLength standard deviation of an axial length by immersion ultrasound
 * @param contactLength standard deviation of an axial length by contact ultrasound
 * @param cornealPower coefficient of variation of the mean corneal power
 * @param lensPosition standard deviation of the predicted about the actual lens position
 * @param refraction standard deviation of one refraction of an operated eye
 */
public record SpreadPolicy(
        Spread<PureNumber> opticalLength,
        Spread<Millimetres> immersionLength,
        Spread<Millimetres> contactLength,
        Spread<PureNumber> cornealPower,
        Spread<Millimetres> lensPosition,
        Spread<Dioptres> refraction) {

    /** Values from the literature, each with its source; from memory or secondary where it says so. */
    public static SpreadPolicy usual() {
        return new SpreadPolicy(
                new Spread<>(
                        PureNumber.of(0.0006), "repeatability of optical biometers 0.03 to 0.06 %; secondary source"),
                new Spread<>(Millimetres.of(0.12), "Olsen, Acta Ophthalmol 2007;85:472 (value from memory)"),
                ContactUltrasound.spread(),
                new Spread<>(PureNumber.of(0.004), "repeatability of keratometry 0.2 to 0.4 %; secondary source"),
                new Spread<>(Millimetres.of(0.2), "Olsen, J Cataract Refract Surg 2006;32:419 (value from memory)"),
                new Spread<>(
                        Dioptres.of(0.28),
                        "limits of agreement 0.78 D between two refractions: Bullimore et al., Optom Vis Sci 1998;75:617"
                                + " (value from memory)"));
    }

    /** What that means for one eye. */
    public Spreads of(BiometryMethod method, EyeShape shape) {
        Spread<Millimetres> length =
                switch (method) {
                    case OPTICAL ->
                        new Spread<>(
                                Millimetres.of(opticalLength.deviation().value()
                                        * shape.axialLength().value()),
                                opticalLength.source());
                    case IMMERSION_ULTRASOUND -> immersionLength;
                    case CONTACT_ULTRASOUND -> contactLength;
                };
        Spread<Dioptres> cornea = new Spread<>(
                Dioptres.of(cornealPower.deviation().value()
                        * shape.keratometricPower().value()),
                cornealPower.source());
        return new Spreads(length, cornea, lensPosition, refraction);
    }
}
