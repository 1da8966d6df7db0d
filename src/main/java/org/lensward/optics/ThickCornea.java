package org.lensward.optics;

import org.lensward.quantity.Millimetres;

/**
 * A cornea with a front, a back and a thickness, of index 1.376 between air and aqueous.
 *
 * @param frontRadius of the anterior surface
 * @param backRadius of the posterior surface
 * @param thickness in the middle
 */
public record ThickCornea(Millimetres frontRadius, Millimetres backRadius, Millimetres thickness) {

    private static final double AIR = 1;
    private static final double STROMA = 1.376;
    private static final double AQUEOUS = ThinEye.INDEX.value();

    /** Gullstrand's exact eye: radii 7.7 and 6.8 mm, 0.5 mm thick, 43.05 D (Helmholtz, Physiological Optics, 1909 appendix). */
    public static ThickCornea gullstrand() {
        return ofFront(Millimetres.of(7.7));
    }

    /** A cornea of this front with Gullstrand's proportions: the back radius 6.8 / 7.7 of the front's, 0.5 mm thick. */
    public static ThickCornea ofFront(Millimetres radius) {
        return new ThickCornea(radius, Millimetres.of(radius.value() * 6.8 / 7.7), Millimetres.of(0.5));
    }

    /** Its power and principal planes. */
    public PrincipalPlanes planes() {
        return PrincipalPlanes.of(surfaces(), AIR, AQUEOUS);
    }

    ThickSurfaces surfaces() {
        return new ThickSurfaces(
                1000 * (STROMA - AIR) / frontRadius.value(),
                thickness.value() / 1000 / STROMA,
                1000 * (AQUEOUS - STROMA) / backRadius.value());
    }
}
