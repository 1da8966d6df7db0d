package org.lensward.optics;

import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * A paraxial system as the 2x2 matrix that takes a ray's height (m) and reduced slope from its first to its last plane. Refraction by F
 * is (1, 0; -F, 1), a reduced distance t is (1, t; 0, 1); the determinant is one (Gerrard and Burch, Matrix Methods in Optics, 1975).
 */
record RayTransfer(double a, double b, double c, double d) {

    static RayTransfer refract(double power) {
        return new RayTransfer(1, 0, -power, 1);
    }

    RayTransfer refracted(double power) {
        return new RayTransfer(a, b, c - power * a, d - power * b);
    }

    RayTransfer travel(double reduced) {
        return new RayTransfer(a + reduced * c, b + reduced * d, c, d);
    }

    RayTransfer then(RayTransfer next) {
        return new RayTransfer(
                next.a * a + next.b * c, next.a * b + next.b * d, next.c * a + next.d * c, next.c * b + next.d * d);
    }

    /** H = n0 (1 - d) / F from the first plane, H' = n1 (a - 1) / F from the last, F = -c. */
    PrincipalPlanes planes(double before, double behind) {
        double power = -c;
        if (power == 0) {
            return new PrincipalPlanes(Dioptres.of(0), Millimetres.of(0), Millimetres.of(0));
        }
        return new PrincipalPlanes(
                Dioptres.of(power),
                Millimetres.of(1000 * before * (1 - d) / power),
                Millimetres.of(1000 * behind * (a - 1) / power));
    }
}
