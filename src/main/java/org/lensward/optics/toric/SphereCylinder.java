package org.lensward.optics.toric;

import java.util.Locale;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/**
 * A refraction as it is written down, with minus cylinder.
 *
 * @param sphere the power along the axis, the most positive of all meridians
 * @param cylinder nought or less
 * @param axis from 0 to below 180 degrees
 */
public record SphereCylinder(Dioptres sphere, Dioptres cylinder, Degrees axis) {

    public SphereCylinder {
        if (cylinder.value() > 0) {
            throw new IllegalArgumentException("Written with minus cylinder, not " + cylinder);
        }
    }

    /** The refraction of this matrix. */
    public static SphereCylinder of(PowerMatrix refraction) {
        Astigmatism astigmatism = refraction.astigmatism();
        double cylinder = astigmatism.magnitude().value();
        return new SphereCylinder(
                Dioptres.of(refraction.mean().value() + cylinder / 2),
                Dioptres.of(-cylinder),
                astigmatism.steepMeridian());
    }

    /** The matrix of this refraction; the inverse of {@link #of}. */
    public PowerMatrix matrix() {
        return PowerMatrix.of(sphericalEquivalent(), Astigmatism.of(Dioptres.of(-cylinder.value()), axis));
    }

    /** Sphere and half the cylinder. */
    public Dioptres sphericalEquivalent() {
        return Dioptres.of(sphere.value() + cylinder.value() / 2);
    }

    /** As a prescription writes it: {@code +0.25 -0.75 x 90}. */
    @Override
    public String toString() {
        double shown = Math.rint(axis.value());
        return String.format(
                Locale.ROOT, "%+.2f %+.2f x %.0f", sphere.value(), cylinder.value(), shown == 0 ? 180 : shown);
    }
}
