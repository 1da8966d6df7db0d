package org.lensward.optics;

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
}
