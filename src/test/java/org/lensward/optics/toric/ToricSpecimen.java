package org.lensward.optics.toric;

import static org.lensward.optics.OpticsSpecimen.between;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.lensward.optics.OpticsSpecimen;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/** Astigmatic corneas and eyes to try the toric optics with. */
final class ToricSpecimen {

    private ToricSpecimen() {}

    static Astigmatism astigmatism(double magnitude, double steep) {
        return Astigmatism.of(Dioptres.of(magnitude), Degrees.of(steep));
    }

    static Arbitrary<Astigmatism> astigmatisms() {
        return Combinators.combine(between(0, 6), between(0, 179.9)).as(ToricSpecimen::astigmatism);
    }

    static Arbitrary<ToricEye> eyes() {
        return Combinators.combine(OpticsSpecimen.thinEyes(), astigmatisms()).as(ToricEye::new);
    }

    static Arbitrary<ToricLens> lenses() {
        return Combinators.combine(between(5, 30), between(0, 6), between(0, 179.9))
                .as((power, cylinder, axis) ->
                        new ToricLens(Dioptres.of(power), Dioptres.of(cylinder), Degrees.of(axis)));
    }

    /** Long's matrix of sphere S, cylinder C, axis a. */
    static RealMatrix longMatrix(double sphere, double cylinder, double axis) {
        double sin = Math.sin(Math.toRadians(axis));
        double cos = Math.cos(Math.toRadians(axis));
        return new Array2DRowRealMatrix(new double[][] {
            {sphere + cylinder * sin * sin, -cylinder * sin * cos},
            {-cylinder * sin * cos, sphere + cylinder * cos * cos}
        });
    }
}
