package org.lensward.outcome.constant;

import java.util.OptionalDouble;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;

/**
 * Where a thin lens must lie to explain a refraction: {@link ThinEye#refraction} solved for the lens position.
 *
 * <pre>
 * q = 1000 n / (Kc + Rc)
 * d = ((L + q) - sqrt((q - L)^2 + 4000 n (q - L) / P)) / 2
 * </pre>
 *
 * Rc the refraction at the cornea; undefined for a lens without power. The other root lies behind the retina.
 */
final class LensPositions {

    private static final double N = 1000 * ThinEye.INDEX.value();
    private static final double VERTEX = ThinEye.VERTEX_DISTANCE.value() / 1000;

    private LensPositions() {}

    /**
     * In mm behind the cornea; empty where no position explains it.
     *
     * @param eye its length and cornea; where its formula put the lens does not matter
     * @param power of the lens implanted
     * @param refraction spherical equivalent at 12 mm
     */
    static OptionalDouble explaining(ThinEye eye, Dioptres power, Dioptres refraction) {
        if (power.value() == 0) {
            return OptionalDouble.empty();
        }
        double length = eye.opticalLength().value();
        double atCornea = refraction.value() / (1 - VERTEX * refraction.value());
        double image = N / (eye.cornealPower().value() + atCornea);
        double under = (image - length) * (image - length) + 4 * N * (image - length) / power.value();
        double position = (length + image - Math.sqrt(under)) / 2;
        return position > 0 && position < length ? OptionalDouble.of(position) : OptionalDouble.empty();
    }
}
