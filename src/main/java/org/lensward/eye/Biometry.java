package org.lensward.eye;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.finding.Evidence;
import org.lensward.quantity.MetresPerSecond;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * What was measured of one eye for planning its lens.
 *
 * @param eye the eye measured
 * @param method how the length was taken
 * @param measuredOn the day of the length and the keratometry; the earlier where they differ
 * @param axialLength from the corneal surface to the retina as the method defines it
 * @param keratometry the anterior cornea
 * @param details what else was measured in the session
 */
public record Biometry(
        Laterality eye,
        BiometryMethod method,
        LocalDate measuredOn,
        Measured<Millimetres> axialLength,
        Measured<Keratometry> keratometry,
        Details details) {

    /**
     * Measurements that a plan can do without.
     *
     * @param anteriorChamberDepth from the corneal <em>epithelium</em> to the lens
     * @param lensThickness of the natural lens
     * @param lengthScatter standard deviation of the axial length readings
     * @param lengthSignal signal-to-noise ratio of the axial length
     * @param soundVelocity that the device assumed, where the length was taken by ultrasound
     */
    public record Details(
            Optional<Measured<Millimetres>> anteriorChamberDepth,
            Optional<Measured<Millimetres>> lensThickness,
            Optional<Measured<Millimetres>> lengthScatter,
            Optional<Measured<PureNumber>> lengthSignal,
            Optional<Measured<MetresPerSecond>> soundVelocity) {

        public static Details none() {
            return new Details(
                    Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        }
    }

    /** The same biometry with another length, read off the same evidence. */
    public Biometry withAxialLength(Millimetres corrected) {
        Measured<Millimetres> length = new Measured<>(corrected, axialLength.evidence());
        return new Biometry(eye, method, measuredOn, length, keratometry, details);
    }

    /** The same biometry as immersion would have given it: that length, but no surer than the readings it came from. */
    public Biometry asImmersion(Millimetres length, Millimetres scatter) {
        Evidence evidence = axialLength.evidence();
        Details wider = new Details(
                details.anteriorChamberDepth(),
                details.lensThickness(),
                Optional.of(new Measured<>(scatter, evidence)),
                details.lengthSignal(),
                details.soundVelocity());
        return new Biometry(
                eye,
                BiometryMethod.IMMERSION_ULTRASOUND,
                measuredOn,
                new Measured<>(length, evidence),
                keratometry,
                wider);
    }
}
