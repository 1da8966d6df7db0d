package org.lensward.optics;

import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.RefractiveIndex;

/**
 * The eye as every thin-lens formula sees it: a thin cornea, a thin lens behind it, the retina. The formulas differ only in where
 * they put the lens, what length they give the eye and what power they give the cornea.
 *
 * <pre>
 * z = K + R / (1 - v R)
 * P = 1000 n / (L - d) - 1000 n / (1000 n / z - d)
 * </pre>
 *
 * n = 1.336 (aqueous and vitreous), v = 0.012 m (vertex distance), R the refraction at the spectacle plane in D, P the lens power
 * in D. The reduced-vergence form is common to the five papers cited at each formula.
 *
 * @param lensPosition d, from the cornea to the thin lens; above 0 and below the optical length
 * @param opticalLength L, from the cornea to the retina
 * @param cornealPower K, the power this formula gives the cornea
 */
public record ThinEye(Millimetres lensPosition, Millimetres opticalLength, Dioptres cornealPower) {

    /** The index of aqueous and vitreous. */
    public static final RefractiveIndex INDEX = RefractiveIndex.of(1.336);

    /** From the spectacle plane to the cornea. */
    public static final Millimetres VERTEX_DISTANCE = Millimetres.of(12);

    /** Reduced to air: 1000 n, so that a distance in mm gives a vergence in D. */
    private static final double N = 1336;

    private static final double VERTEX = 0.012;

    public ThinEye {
        if (lensPosition.value() <= 0 || lensPosition.compareTo(opticalLength) >= 0) {
            throw new IllegalArgumentException("No lens at " + lensPosition + " in an eye of " + opticalLength);
        }
    }

    /**
     * The power of the lens that leaves this refraction.
     *
     * @param refraction spherical equivalent at the spectacle plane
     */
    public Dioptres power(Dioptres refraction) {
        double atCornea = cornealPower.value() + refraction.value() / (1 - VERTEX * refraction.value());
        double d = lensPosition.value();
        return Dioptres.of(N / (opticalLength.value() - d) - N / (N / atCornea - d));
    }

    /**
     * The refraction that this lens leaves, at the spectacle plane; the inverse of {@link #power}.
     *
     * @param power of the thin lens in aqueous
     */
    public Dioptres refraction(Dioptres power) {
        double d = lensPosition.value();
        double atCornea = N / (N / (N / (opticalLength.value() - d) - power.value()) + d) - cornealPower.value();
        return Dioptres.of(atCornea / (1 + VERTEX * atCornea));
    }

    /** The same eye with its lens further back by the given distance; forward if negative. */
    public ThinEye withLensMoved(Millimetres back) {
        return new ThinEye(lensPosition.plus(back), opticalLength, cornealPower);
    }
}
