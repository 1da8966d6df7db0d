package org.lensward.optics;

/**
 * A paraxial system as the 2x2 matrix that takes a ray's height (m) and reduced slope from its first to its last plane. Refraction by F
 * is (1, 0; -F, 1), a reduced distance t is (1, t; 0, 1); the determinant is one (Gerrard and Burch, Matrix Methods in Optics, 1975).
 */
record ParaxialSystem(double a, double b, double c, double d) {

    static ParaxialSystem refract(double power) {
        return new ParaxialSystem(1, 0, -power, 1);
    }

    ParaxialSystem refracted(double power) {
        return new ParaxialSystem(a, b, c - power * a, d - power * b);
    }

    ParaxialSystem travel(double reduced) {
        return new ParaxialSystem(a + reduced * c, b + reduced * d, c, d);
    }

    ParaxialSystem then(ParaxialSystem next) {
        return new ParaxialSystem(
                next.a * a + next.b * c, next.a * b + next.b * d, next.c * a + next.d * c, next.c * b + next.d * d);
    }
}
