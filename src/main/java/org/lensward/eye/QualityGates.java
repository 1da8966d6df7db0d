package org.lensward.eye;

import static org.lensward.finding.FindingCode.AXIAL_LENGTH_UNUSUAL;
import static org.lensward.finding.FindingCode.BIOMETRY_BEFORE_EYE_SURGERY;
import static org.lensward.finding.FindingCode.BIOMETRY_EXPIRED;
import static org.lensward.finding.FindingCode.BIOMETRY_OVER_A_YEAR_OLD;
import static org.lensward.finding.FindingCode.CONTACT_LENS_WORN_LATELY;
import static org.lensward.finding.FindingCode.CONTACT_ULTRASOUND;
import static org.lensward.finding.FindingCode.CORNEAL_ASTIGMATISM_HIGH;
import static org.lensward.finding.FindingCode.CORNEAL_ASTIGMATISM_TORIC;
import static org.lensward.finding.FindingCode.CORNEAL_READINGS_SCATTERED;
import static org.lensward.finding.FindingCode.DATE_IN_FUTURE;
import static org.lensward.finding.FindingCode.EYES_DIFFER_IN_CORNEAL_POWER;
import static org.lensward.finding.FindingCode.EYES_DIFFER_IN_LENGTH;
import static org.lensward.finding.FindingCode.FELLOW_EYE_NOT_MEASURED;
import static org.lensward.finding.FindingCode.FELLOW_EYE_SURPRISE;
import static org.lensward.finding.FindingCode.KERATOMETRY_UNUSUAL;
import static org.lensward.finding.FindingCode.LENGTH_READINGS_SCATTERED;
import static org.lensward.finding.FindingCode.LENGTH_SIGNAL_WEAK;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;
import org.lensward.quantity.Quantity;

/** Whether one eye's biometry can be trusted for an operation on a given day. */
public final class QualityGates {

    /** Far below what any instrument resolves; numbers closer than this differ only by how they were computed. */
    private static final double SAME = 1e-6;

    private final BiometryPolicy policy;

    public QualityGates(BiometryPolicy policy) {
        this.policy = policy;
    }

    /**
     * Everything the policy has to say.
     *
     * @param eye the eye to be operated on, with biometry
     * @param fellow the other eye
     * @param operation the day of the operation, by which the age of the biometry is judged
     */
    public List<Finding> judge(Biometry biometry, Eye eye, Eye fellow, LocalDate operation) {
        List<Finding> found = new ArrayList<>();
        age(biometry, eye, operation, found);
        length(biometry, found);
        cornea(biometry, found);
        cornealReadings(eye.other(), found);
        fellow(biometry, fellow, found);
        return found;
    }

    private void age(Biometry biometry, Eye eye, LocalDate operation, List<Finding> found) {
        Evidence length = biometry.axialLength().evidence().at("effective");
        if (biometry.measuredOn().isAfter(operation)) {
            found.add(Finding.of(DATE_IN_FUTURE, length, "biometry", biometry.measuredOn() + " (after the operation)"));
            return;
        }
        long months = ChronoUnit.MONTHS.between(biometry.measuredOn(), operation);
        if (biometry.measuredOn()
                .plusMonths((long) policy.expiryMonths().value().value())
                .isBefore(operation)) {
            found.add(Finding.of(BIOMETRY_EXPIRED, length, months, (long)
                    policy.expiryMonths().value().value()));
        } else if (biometry.measuredOn()
                .plusMonths((long) policy.recheckMonths().value().value())
                .isBefore(operation)) {
            found.add(Finding.of(BIOMETRY_OVER_A_YEAR_OLD, length, months));
        }
        for (EyeSurgery surgery : eye.surgery()) {
            // An operation without a date may have come after the measurement, so it counts as if it had.
            if (!surgery.performedOn().map(biometry.measuredOn()::isAfter).orElse(false)) {
                found.add(Finding.of(
                        BIOMETRY_BEFORE_EYE_SURGERY,
                        List.of(surgery.evidence(), length),
                        surgery.words()
                                + surgery.performedOn().map(day -> ", " + day).orElse(", day unknown"),
                        biometry.measuredOn()));
            }
        }
    }

    private void length(Biometry biometry, List<Finding> found) {
        outside(AXIAL_LENGTH_UNUSUAL, biometry.axialLength(), policy.shortestLength(), policy.longestLength(), found);
        biometry.details()
                .lengthScatter()
                .ifPresent(scatter -> above(LENGTH_READINGS_SCATTERED, scatter, policy.lengthScatter(), found));
        biometry.details().lengthSignal().ifPresent(signal -> {
            if (exceeds(policy.lengthSignal().value(), signal.value())) {
                found.add(Finding.of(
                        LENGTH_SIGNAL_WEAK,
                        signal.evidence(),
                        signal.value().rounded(),
                        policy.lengthSignal().value().rounded()));
            }
        });
        if (biometry.method() == BiometryMethod.CONTACT_ULTRASOUND) {
            found.add(Finding.of(
                    CONTACT_ULTRASOUND, biometry.axialLength().evidence().at("method")));
        }
    }

    private void cornea(Biometry biometry, List<Finding> found) {
        Keratometry cornea = biometry.keratometry().value();
        Evidence evidence = biometry.keratometry().evidence();
        outside(
                KERATOMETRY_UNUSUAL,
                new Measured<>(cornea.meanPower(), evidence),
                policy.flattestCornea(),
                policy.steepestCornea(),
                found);
        above(
                CORNEAL_ASTIGMATISM_HIGH,
                new Measured<>(cornea.astigmatism(), evidence),
                policy.highestAstigmatism(),
                found);
        if (!exceeds(policy.toricAstigmatism().value(), cornea.astigmatism())) {
            found.add(Finding.of(
                    CORNEAL_ASTIGMATISM_TORIC,
                    evidence,
                    cornea.astigmatism().rounded(),
                    cornea.steepMeridian().map(Quantity::rounded).orElse("an unrecorded meridian")));
        }
    }

    private void cornealReadings(OtherReadings other, List<Finding> found) {
        other.cornealScatter()
                .ifPresent(scatter -> above(CORNEAL_READINGS_SCATTERED, scatter, policy.cornealScatter(), found));
        worn(other.daysWithoutSoftLenses(), policy.softLensDays(), found);
        worn(other.daysWithoutRigidLenses(), policy.rigidLensDays(), found);
    }

    private static void worn(Optional<Measured<PureNumber>> out, Limit<PureNumber> least, List<Finding> found) {
        out.filter(days -> days.value().compareTo(least.value()) < 0)
                .ifPresent(days -> found.add(Finding.of(
                        CONTACT_LENS_WORN_LATELY,
                        days.evidence(),
                        days.value().value(),
                        least.value().value())));
    }

    private void fellow(Biometry biometry, Eye fellow, List<Finding> found) {
        fellow.surprise().ifPresent(error -> {
            if (exceeds(
                    error.value().distanceTo(Dioptres.of(0)),
                    policy.fellowSurprise().value())) {
                found.add(Finding.of(
                        FELLOW_EYE_SURPRISE, error.evidence(), error.value().signed()));
            }
        });
        if (fellow.biometry().isEmpty()) {
            found.add(Finding.of(FELLOW_EYE_NOT_MEASURED, biometry.axialLength().evidence()));
            return;
        }
        Biometry other = fellow.biometry().get();
        List<Evidence> lengths =
                List.of(biometry.axialLength().evidence(), other.axialLength().evidence());
        var apart =
                biometry.axialLength().value().distanceTo(other.axialLength().value());
        if (exceeds(apart, policy.eyesApartInLength().value())) {
            found.add(Finding.of(
                    EYES_DIFFER_IN_LENGTH,
                    lengths,
                    apart.rounded(),
                    policy.eyesApartInLength().value().rounded()));
        }
        List<Evidence> corneas =
                List.of(biometry.keratometry().evidence(), other.keratometry().evidence());
        var power = biometry.keratometry()
                .value()
                .meanPower()
                .distanceTo(other.keratometry().value().meanPower());
        if (exceeds(power, policy.eyesApartInPower().value())) {
            found.add(Finding.of(
                    EYES_DIFFER_IN_CORNEAL_POWER,
                    corneas,
                    power.rounded(),
                    policy.eyesApartInPower().value().rounded()));
        }
    }

    private static <Q extends Quantity> void outside(
            FindingCode code, Measured<Q> measured, Limit<Q> least, Limit<Q> most, List<Finding> found) {
        if (exceeds(least.value(), measured.value()) || exceeds(measured.value(), most.value())) {
            found.add(Finding.of(
                    code,
                    measured.evidence(),
                    measured.value().rounded(),
                    least.value().rounded(),
                    most.value().rounded()));
        }
    }

    private static <Q extends Quantity> void above(
            FindingCode code, Measured<Q> measured, Limit<Q> most, List<Finding> found) {
        if (exceeds(measured.value(), most.value())) {
            found.add(Finding.of(
                    code,
                    measured.evidence(),
                    measured.value().rounded(),
                    most.value().rounded()));
        }
    }

    private static <Q extends Quantity> boolean exceeds(Q one, Q other) {
        return one.value() - other.value() > SAME;
    }
}
