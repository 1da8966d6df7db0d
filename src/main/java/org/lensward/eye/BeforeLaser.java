package org.lensward.eye;

import org.lensward.quantity.Dioptres;

/**
 * What was written down when a cornea was lasered.
 *
 * @param power mean keratometric power before the laser, index 1.3375
 * @param refraction spherical equivalent at the spectacle plane before the laser
 * @param refractionAfter the same after it, stable and before the lens clouded
 */
public record BeforeLaser(
        Measured<Dioptres> power, Measured<Dioptres> refraction, Measured<Dioptres> refractionAfter) {}
