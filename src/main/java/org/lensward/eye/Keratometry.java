package org.lensward.eye;

import java.util.Optional;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.RefractiveIndex;

/**
 * The curvature of the anterior cornea on its flattest and steepest meridian. The radius is what a keratometer measures; a power
 * in dioptres means nothing without the keratometric index it was computed with.
 *
 * @param flatRadius the longer radius, 5 to 12 mm
 * @param steepRadius the shorter radius, not above the flat one
 * @param steepMeridian the meridian of the shorter radius, 0 to 180 degrees, where it was recorded
 */
public record Keratometry(Millimetres flatRadius, Millimetres steepRadius, Optional<Degrees> steepMeridian) {

    /** The keratometric index that the published formulas assume; common to keratometers, not a property of the eye. */
    public static final RefractiveIndex STANDARD_INDEX = RefractiveIndex.of(1.3375);

    public Keratometry {
        if (steepRadius.value() <= 0) {
            throw new IllegalArgumentException("A cornea of radius " + steepRadius);
        }
        if (steepRadius.compareTo(flatRadius) > 0) {
            throw new IllegalArgumentException(
                    "The steep radius " + steepRadius + " exceeds the flat one " + flatRadius);
        }
    }

    /** From the powers a keratometer shows, the steep one not below the flat, and the index it used: r = 1000 (n - 1) / K. */
    public static Keratometry ofPowers(
            Dioptres flat, Dioptres steep, RefractiveIndex index, Optional<Degrees> steepMeridian) {
        return new Keratometry(radius(flat, index), radius(steep, index), steepMeridian);
    }

    /** The power of a surface of that radius by the standard index 1.3375: K = 337.5 / r. */
    public static Dioptres power(Millimetres radius) {
        return Dioptres.of(1000 * (STANDARD_INDEX.value() - 1) / radius.value());
    }

    private static Millimetres radius(Dioptres power, RefractiveIndex index) {
        return Millimetres.of(1000 * (index.value() - 1) / power.value());
    }

    public Dioptres flatPower() {
        return power(flatRadius);
    }

    public Dioptres steepPower() {
        return power(steepRadius);
    }

    /** The mean of both powers by the standard index. */
    public Dioptres meanPower() {
        return Dioptres.of((flatPower().value() + steepPower().value()) / 2);
    }

    /** The radius of a spherical cornea of the mean power: 337.5 / K. */
    public Millimetres meanRadius() {
        return radius(meanPower(), STANDARD_INDEX);
    }

    /** Steep minus flat power by the standard index; nought or more. */
    public Dioptres astigmatism() {
        return steepPower().minus(flatPower());
    }
}
