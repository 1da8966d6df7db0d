package org.lensward.optics.accuracy;

import org.lensward.optics.Spread;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/**
 * How far a lens may differ from its label: ISO 11979-2 (values from memory). The standard limits the error and says nothing of its
 * distribution; as a deviation each limit is taken as uniform, limit / sqrt 3 (JCGM 100:2008, 4.3.7), which is on the safe side of lenses
 * made better than they must be.
 */
public final class LabelTolerance {

    private static final String SOURCE = "ISO 11979-2 limit, taken as uniform (JCGM 100:2008, 4.3.7)";

    /** How far the axis marks may lie off. */
    public static final Degrees AXIS = Degrees.of(5);

    private LabelTolerance() {}

    /** The limit of the spherical power: 0.3 D up to 15 D, 0.4 to 25, 0.5 to 30, 1.0 above; by size, whatever the sign. */
    public static Dioptres ofPower(Dioptres label) {
        double size = Math.abs(label.value());
        if (size <= 15) {
            return Dioptres.of(0.3);
        }
        if (size <= 25) {
            return Dioptres.of(0.4);
        }
        return Dioptres.of(size <= 30 ? 0.5 : 1.0);
    }

    /** The limit of the cylinder: 0.3 D up to 2.5 D, 0.4 to 4.5, 0.5 above. */
    public static Dioptres ofCylinder(Dioptres label) {
        if (label.value() <= 2.5) {
            return Dioptres.of(0.3);
        }
        return Dioptres.of(label.value() <= 4.5 ? 0.4 : 0.5);
    }

    /** One standard deviation of the spherical power about its label. */
    public static Spread<Dioptres> spread(Dioptres label) {
        return new Spread<>(Dioptres.of(ofPower(label).value() / Math.sqrt(3)), SOURCE);
    }
}
