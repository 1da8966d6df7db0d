package org.lensward.optics;

import java.util.Optional;
import org.lensward.eye.Keratometry;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * What a thin-lens formula needs to know of an eye.
 *
 * @param axialLength as the biometer reports it
 * @param cornealRadius mean radius of the anterior cornea
 * @param anteriorChamberDepth from the epithelium to the lens, for the formulas that ask for it
 */
public record EyeShape(Millimetres axialLength, Millimetres cornealRadius, Optional<Millimetres> anteriorChamberDepth) {

    public EyeShape {
        if (axialLength.value() <= 0 || cornealRadius.value() <= 0) {
            throw new IllegalArgumentException(
                    "An eye has a length and a curvature: " + axialLength + ", " + cornealRadius);
        }
    }

    /** The mean corneal power by the keratometric index 1.3375. */
    public Dioptres keratometricPower() {
        return Keratometry.power(cornealRadius);
    }

    /** The same eye with the mean radius of a cornea of this keratometric power, index 1.3375. */
    public EyeShape withKeratometricPower(Dioptres power) {
        double radius = 1000 * (Keratometry.STANDARD_INDEX.value() - 1) / power.value();
        return new EyeShape(axialLength, Millimetres.of(radius), anteriorChamberDepth);
    }

    /** The same eye, longer or shorter. */
    public EyeShape withAxialLength(Millimetres length) {
        return new EyeShape(length, cornealRadius, anteriorChamberDepth);
    }
}
