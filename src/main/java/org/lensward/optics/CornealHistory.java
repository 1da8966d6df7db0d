package org.lensward.optics;

import org.lensward.quantity.Dioptres;

/**
 * What was written down when a cornea was lasered.
 *
 * @param powerBefore keratometric power before the laser, index 1.3375
 * @param refractionBefore spherical equivalent at the spectacle plane before the laser
 * @param refractionAfter the same after it, stable and before the lens clouded
 */
public record CornealHistory(Dioptres powerBefore, Dioptres refractionBefore, Dioptres refractionAfter) {

    private static final double VERTEX = ThinEye.VERTEX_DISTANCE.value() / 1000;

    /**
     * The corneal power now by the clinical history method: K before less what the laser changed the refraction by, at the cornea
     * (Holladay, Refract Corneal Surg 1989;5:203, value from memory).
     */
    public Dioptres powerNow() {
        return Dioptres.of(powerBefore.value() - (atCornea(refractionAfter) - atCornea(refractionBefore)));
    }

    private static double atCornea(Dioptres refraction) {
        return refraction.value() / (1 - VERTEX * refraction.value());
    }
}
