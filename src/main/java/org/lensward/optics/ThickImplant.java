package org.lensward.optics;

import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.RefractiveIndex;

/**
 * A lens implant with two surfaces and a thickness, in aqueous.
 *
 * @param frontPower of the anterior surface
 * @param backPower of the posterior surface
 * @param thickness in the middle
 * @param material index of the optic
 */
public record ThickImplant(Dioptres frontPower, Dioptres backPower, Millimetres thickness, RefractiveIndex material) {

    /**
     * An optic with equal surfaces and this power: F1 = (1 - sqrt(1 - t F)) / t, t the reduced thickness in m.
     *
     * @param power of the whole lens in aqueous
     */
    public static ThickImplant equiconvex(Dioptres power, Millimetres thickness, RefractiveIndex material) {
        double reduced = thickness.value() / 1000 / material.value();
        Dioptres surface = Dioptres.of((1 - Math.sqrt(1 - reduced * power.value())) / reduced);
        return new ThickImplant(surface, surface, thickness, material);
    }

    /** Its power and principal planes. */
    public PrincipalPlanes planes() {
        return PrincipalPlanes.of(surfaces(), ThinEye.INDEX.value(), ThinEye.INDEX.value());
    }

    ThickSurfaces surfaces() {
        return new ThickSurfaces(frontPower.value(), thickness.value() / 1000 / material.value(), backPower.value());
    }
}
