package org.lensward.optics;

import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * A lens put into an eye from which no power is taken: secondary in aphakia, piggyback, or before the natural lens. Holladay, Am J
 * Ophthalmol 1993;116:63-66. The length of the eye is not needed.
 *
 * <pre>
 * P = 1336 / (1336 / (K + before) - d) - 1336 / (1336 / (K + after) - d)
 * </pre>
 *
 * before and after the spherical equivalents at the cornea, R / (1 - v R), in D.
 *
 * @param cornealPower K, the net power; see {@link #netPower}
 * @param lensPosition d, from the cornea to the added lens
 * @param vertexDistance v of the refraction
 */
public record AddedLens(Dioptres cornealPower, Millimetres lensPosition, Millimetres vertexDistance) {

    private static final double N = 1000 * ThinEye.INDEX.value();

    /** The net power behind a keratometric one: index 4/3 for 1.3375, so 45.00 D gives 44.44 D (Holladay 1993). */
    public static Dioptres netPower(Dioptres keratometric) {
        return Dioptres.of(keratometric.value() * (1.0 / 3) / 0.3375);
    }

    /**
     * The power that takes the eye from one refraction to the other.
     *
     * @param before spherical equivalent without the added lens
     * @param after spherical equivalent wanted with it
     */
    public Dioptres power(Dioptres before, Dioptres after) {
        return Dioptres.of(atLens(before) - atLens(after));
    }

    /** The refraction that an added lens of this power leaves; the inverse of {@link #power}. */
    public Dioptres refraction(Dioptres before, Dioptres power) {
        double atCornea = N / (N / (atLens(before) - power.value()) + lensPosition.value()) - cornealPower.value();
        return Dioptres.of(atCornea / (1 + vertex() * atCornea));
    }

    private double atLens(Dioptres refraction) {
        double atCornea = refraction.value() / (1 - vertex() * refraction.value());
        return N / (N / (cornealPower.value() + atCornea) - lensPosition.value());
    }

    private double vertex() {
        return vertexDistance.value() / 1000;
    }
}
