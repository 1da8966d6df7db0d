package org.lensward.plan;

import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Biometry;
import org.lensward.eye.BiometryMethod;
import org.lensward.eye.Eye;
import org.lensward.eye.Measured;
import org.lensward.eye.Sign;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.optics.length.SoundPath;
import org.lensward.quantity.MetresPerSecond;

/** Mends a length taken by ultrasound where the device assumed a velocity that is not this eye's. */
final class SoundCorrection {

    /** Devices assume 1548 to 1556 m/s for an eye with its lens; within that range nothing is gained by computing again. */
    private static final double SLOWEST = 1545;

    private static final double FASTEST = 1560;

    private SoundCorrection() {}

    /** The biometry to plan with; withheld where oil misled the sound and the velocity is not recorded. */
    static Outcome<Biometry> of(Eye eye, Biometry biometry) {
        if (biometry.method() == BiometryMethod.OPTICAL) {
            return Outcome.ready(biometry);
        }
        // Oil that is to leave is still there when the eye is measured.
        boolean oil = Stream.of(Sign.SILICONE_OIL, Sign.SILICONE_OIL_STAYS, Sign.SILICONE_OIL_LEAVES)
                .anyMatch(sign -> eye.history().affirmed(sign).isPresent());
        Optional<MetresPerSecond> velocity = biometry.details().soundVelocity().map(Measured::value);
        if (oil) {
            return velocity.map(assumed -> corrected(biometry, new SoundPath.OilBehindNaturalLens(), assumed))
                    .orElseGet(() -> Outcome.withheld(Finding.of(
                            FindingCode.SILICONE_OIL_IN_EYE,
                            biometry.axialLength().evidence(),
                            "length by ultrasound, velocity not recorded")));
        }
        return velocity.filter(assumed -> assumed.value() < SLOWEST || assumed.value() > FASTEST)
                .map(assumed -> corrected(biometry, new SoundPath.NaturalLens(), assumed))
                .orElseGet(() -> Outcome.ready(biometry));
    }

    private static Outcome<Biometry> corrected(Biometry biometry, SoundPath path, MetresPerSecond assumed) {
        return path.trueLength(biometry.axialLength(), assumed)
                .then(length -> Outcome.ready(biometry.withAxialLength(length)));
    }
}
