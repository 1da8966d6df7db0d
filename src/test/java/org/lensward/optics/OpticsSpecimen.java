package org.lensward.optics;

import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** Eyes and constants to try the optics with. */
public final class OpticsSpecimen {

    public static final Evidence SOMEWHERE = new Evidence("Observation/eye-1", "1", "value");
    public static final LensConstants CONSTANTS = LensConstants.ofAConstant(PureNumber.of(118.4));

    private OpticsSpecimen() {}

    public static EyeShape shape(double axialLength, double keratometricPower) {
        return new EyeShape(
                Millimetres.of(axialLength),
                Millimetres.of(337.5 / keratometricPower),
                Optional.of(Millimetres.of(3.1)));
    }

    public static ThinEye thin(double lensPosition, double opticalLength, double cornealPower) {
        return new ThinEye(Millimetres.of(lensPosition), Millimetres.of(opticalLength), Dioptres.of(cornealPower));
    }

    public static ThinEye seen(Formula formula, EyeShape shape) {
        return formula.see(shape, CONSTANTS, SOMEWHERE).value().orElseThrow();
    }

    public static Arbitrary<EyeShape> shapes() {
        return Combinators.combine(between(20.5, 31), between(38, 48)).as(OpticsSpecimen::shape);
    }

    public static Arbitrary<ThinEye> thinEyes() {
        return Combinators.combine(between(3.5, 7), between(20.5, 31), between(35, 50))
                .as(OpticsSpecimen::thin);
    }

    public static Arbitrary<Dioptres> refractions() {
        return between(-12, 12).map(Dioptres::of);
    }

    public static Arbitrary<Double> between(double least, double most) {
        return Arbitraries.doubles().between(least, most).ofScale(6);
    }
}
