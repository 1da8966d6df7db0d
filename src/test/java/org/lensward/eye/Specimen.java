package org.lensward.eye;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.MetresPerSecond;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** An eye for tests: ordinary unless a test says otherwise, so that a test shows only what matters to it. */
public record Specimen(Biometry biometry, List<EyeSurgery> surgery, Optional<Measured<Dioptres>> surprise) {

    public static final Evidence LENGTH = new Evidence("Observation/length", "1", "valueQuantity");
    public static final Evidence CORNEA = new Evidence("Observation/cornea", "1", "component");
    public static final Evidence DEPTH = new Evidence("Observation/depth", "1", "valueQuantity");
    public static final Evidence OPERATION = new Evidence("Procedure/earlier", "1", "performed");
    public static final Evidence REFRACTION = new Evidence("Observation/refraction", "1", "valueQuantity");

    /** Average in every respect, measured by light. */
    public static Specimen ordinary(Laterality side, LocalDate measuredOn) {
        return new Specimen(
                new Biometry(
                        side,
                        BiometryMethod.OPTICAL,
                        measuredOn,
                        new Measured<>(Millimetres.of(23.50), LENGTH),
                        new Measured<>(cornea(43.00, 43.50), CORNEA),
                        Biometry.Details.none()),
                List.of(),
                Optional.empty());
    }

    private static Keratometry cornea(double flat, double steep) {
        return Keratometry.ofPowers(
                Dioptres.of(flat), Dioptres.of(steep), Keratometry.STANDARD_INDEX, Optional.of(Degrees.of(90)));
    }

    public Specimen length(double length) {
        return with(biometry.method(), new Measured<>(Millimetres.of(length), LENGTH), biometry.keratometry());
    }

    public Specimen cornea(Keratometry cornea) {
        return with(biometry.method(), biometry.axialLength(), new Measured<>(cornea, CORNEA));
    }

    public Specimen powers(double flat, double steep) {
        return cornea(cornea(flat, steep));
    }

    public Specimen by(BiometryMethod method) {
        return with(method, biometry.axialLength(), biometry.keratometry());
    }

    /** With an anterior chamber depth in mm. */
    public Specimen depth(double depth) {
        return details(new Biometry.Details(
                Optional.of(new Measured<>(Millimetres.of(depth), DEPTH)),
                biometry.details().lensThickness(),
                biometry.details().lengthScatter(),
                biometry.details().lengthSignal(),
                biometry.details().soundVelocity()));
    }

    public Specimen scatter(double scatter) {
        return details(new Biometry.Details(
                biometry.details().anteriorChamberDepth(),
                biometry.details().lensThickness(),
                Optional.of(new Measured<>(Millimetres.of(scatter), LENGTH)),
                biometry.details().lengthSignal(),
                Optional.empty()));
    }

    /** By ultrasound of that velocity in m/s. */
    public Specimen sound(double velocity) {
        return by(BiometryMethod.IMMERSION_ULTRASOUND)
                .details(new Biometry.Details(
                        biometry.details().anteriorChamberDepth(),
                        biometry.details().lensThickness(),
                        biometry.details().lengthScatter(),
                        biometry.details().lengthSignal(),
                        Optional.of(new Measured<>(MetresPerSecond.of(velocity), LENGTH))));
    }

    public Specimen signal(double signal) {
        return details(new Biometry.Details(
                biometry.details().anteriorChamberDepth(),
                biometry.details().lensThickness(),
                biometry.details().lengthScatter(),
                Optional.of(new Measured<>(PureNumber.of(signal), LENGTH)),
                Optional.empty()));
    }

    public Specimen operatedOn(Optional<LocalDate> day) {
        return new Specimen(biometry, List.of(new EyeSurgery("trabeculectomy", day, OPERATION)), surprise);
    }

    public Specimen surprisedBy(double error) {
        return new Specimen(biometry, surgery, Optional.of(new Measured<>(Dioptres.of(error), REFRACTION)));
    }

    public Eye eye() {
        return eye(Optional.of(biometry));
    }

    public Eye unmeasured() {
        return eye(Optional.empty());
    }

    private Eye eye(Optional<Biometry> measured) {
        return new Eye(biometry.eye(), measured, new History(List.of()), surgery, Optional.empty(), surprise);
    }

    private Specimen with(BiometryMethod method, Measured<Millimetres> length, Measured<Keratometry> cornea) {
        return new Specimen(
                new Biometry(biometry.eye(), method, biometry.measuredOn(), length, cornea, biometry.details()),
                surgery,
                surprise);
    }

    private Specimen details(Biometry.Details details) {
        return new Specimen(
                new Biometry(
                        biometry.eye(),
                        biometry.method(),
                        biometry.measuredOn(),
                        biometry.axialLength(),
                        biometry.keratometry(),
                        details),
                surgery,
                surprise);
    }
}
