package org.lensward.optics;

import java.util.Optional;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** Eyes and lens constants for tests. */
final class Eyes {

    static final Evidence LENGTH = new Evidence("Observation/length", "1", "valueQuantity");

    /** An invented lens; each constant lies where constants of lenses for the capsular bag usually lie. */
    static final LensConstants CONSTANTS = constants(118.4, 1.45, 5.20, 1.30);

    private Eyes() {}

    static LensConstants constants(double a, double surgeonFactor, double personalisedAcd, double a0) {
        return LensConstants.published(
                Optional.of(PureNumber.of(a)),
                Optional.of(Millimetres.of(surgeonFactor)),
                Optional.of(Millimetres.of(personalisedAcd)),
                Optional.of(new HaigisConstants(Millimetres.of(a0), PureNumber.of(0.4), PureNumber.of(0.1))));
    }

    /** An eye of that axial length in mm, keratometric power in D and anterior chamber depth in mm. */
    static EyeShape shape(double length, double power, double chamberDepth) {
        return new EyeShape(
                Millimetres.of(length), Millimetres.of(337.5 / power), Optional.of(Millimetres.of(chamberDepth)));
    }

    static EyeShape shape(double length, double power) {
        return shape(length, power, 3.1);
    }

    static ThinEye see(Formula formula, EyeShape shape) {
        return formula.see(shape, CONSTANTS, LENGTH).value().orElseThrow();
    }

    static ThinEye thin(double lensPosition, double opticalLength, double cornealPower) {
        return new ThinEye(Millimetres.of(lensPosition), Millimetres.of(opticalLength), Dioptres.of(cornealPower));
    }

    /** The power in D for that refraction in D. */
    static double power(ThinEye eye, double refraction) {
        return eye.power(Dioptres.of(refraction)).value();
    }

    /** The refraction in D that a lens of that power in D leaves. */
    static double refraction(ThinEye eye, double power) {
        return eye.refraction(Dioptres.of(power)).value();
    }
}
