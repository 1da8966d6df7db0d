package org.lensward.optics.accuracy;

import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;

/**
 * How the predicted refraction of a {@link ThinEye} answers to each of its terms: the partial derivatives of
 *
 * <pre>
 * V = N / (L - d) - P          vergence before the lens
 * z = N / (N / V + d)          vergence behind the cornea
 * R = (z - K) / (1 + v (z - K))
 * </pre>
 *
 * With dz/dV = (z / V)^2 and dV/dL = -N / (L - d)^2 = -dV/dd they are, all times s = dR/d(z - K) = 1 / (1 + v (z - K))^2:
 * length (z/V)^2 dV/dL; lens position (z/V)^2 dV/dd - z^2 / N; lens power -(z/V)^2; corneal power -1. The lens position's is the
 * expression of Norrby 2008 written another way: (P^2 + 2 P V) / N times (z / V)^2.
 *
 * @param length D/mm
 * @param lensPosition D/mm
 * @param cornealPower of unit one
 * @param lensPower of unit one
 */
record Slopes(double length, double lensPosition, double cornealPower, double lensPower) {

    private static final double N = 1000 * ThinEye.INDEX.value();
    private static final double VERTEX = ThinEye.VERTEX_DISTANCE.value() / 1000;

    static Slopes of(ThinEye eye, Dioptres power) {
        double d = eye.lensPosition().value();
        double behind = eye.opticalLength().value() - d;
        double before = N / behind - power.value();
        double z = N / (N / before + d);
        double gain = z * z / (before * before);
        double bend = N / (behind * behind);
        double toSpectacles = 1 + VERTEX * (z - eye.cornealPower().value());
        double s = 1 / (toSpectacles * toSpectacles);
        return new Slopes(-gain * bend * s, (gain * bend - z * z / N) * s, -s, -gain * s);
    }
}
