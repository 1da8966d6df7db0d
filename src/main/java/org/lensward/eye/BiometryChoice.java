package org.lensward.eye;

import static org.lensward.finding.FindingCode.AXIAL_LENGTH_MISSING;
import static org.lensward.finding.FindingCode.KERATOMETRY_MISSING;
import static org.lensward.finding.FindingCode.MEASUREMENTS_CONTRADICT;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.lensward.eye.Biometry.Details;
import org.lensward.eye.Readings.Dated;
import org.lensward.eye.Readings.Length;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Quantity;

/**
 * Chooses one coherent set of measurements of an eye: the latest length, the keratometry of that day (or else the latest), and the
 * depths of that day only. Two readings of one day that disagree are a reason to withhold, not to average.
 */
public final class BiometryChoice {

    private final BiometryPolicy policy;

    public BiometryChoice(BiometryPolicy policy) {
        this.policy = policy;
    }

    /**
     * The biometry to plan with.
     *
     * @param side which eye
     * @param readings all usable measurements of that eye
     * @param asked what to name as evidence where nothing was measured
     */
    public Outcome<Biometry> choose(Laterality side, Readings readings, Evidence asked) {
        List<Finding> reasons = new ArrayList<>();
        Optional<Length> length = length(side, readings.lengths(), reasons);
        Optional<Dated<Keratometry>> cornea = cornea(side, readings.corneas(), length.map(Length::day), reasons);
        if (length.isEmpty()) {
            reasons.add(0, Finding.of(AXIAL_LENGTH_MISSING, asked, side));
        }
        if (cornea.isEmpty()) {
            reasons.add(Finding.of(KERATOMETRY_MISSING, asked, side));
        }
        return reasons.isEmpty()
                ? Outcome.ready(assemble(side, length.orElseThrow(), cornea.orElseThrow(), readings))
                : Outcome.withheld(reasons);
    }

    private Optional<Length> length(Laterality side, List<Length> lengths, List<Finding> reasons) {
        Optional<LocalDate> latest = lengths.stream().map(Length::day).max(Comparator.naturalOrder());
        List<Length> sameDay = lengths.stream()
                .filter(length -> length.day().equals(latest.orElseThrow()))
                .sorted(Comparator.comparing(Length::method)
                        .thenComparing(length -> length.measured().evidence()))
                .toList();
        // Contact ultrasound presses the eye short; it does not argue with a better method.
        List<Measured<Millimetres>> comparable = sameDay.stream()
                .filter(length -> length.method() != BiometryMethod.CONTACT_ULTRASOUND
                        || sameDay.get(0).method() == BiometryMethod.CONTACT_ULTRASOUND)
                .map(Length::measured)
                .toList();
        contradiction("axial length", side, comparable, Function.identity(), policy.sameDayLength(), reasons);
        return sameDay.stream().findFirst();
    }

    private Optional<Dated<Keratometry>> cornea(
            Laterality side, List<Dated<Keratometry>> corneas, Optional<LocalDate> lengthDay, List<Finding> reasons) {
        Optional<LocalDate> day = corneas.stream()
                .map(Dated::day)
                .max(Comparator.comparing((LocalDate each) ->
                                lengthDay.filter(each::equals).isPresent())
                        .thenComparing(Comparator.naturalOrder()));
        List<Dated<Keratometry>> sameDay = corneas.stream()
                .filter(cornea -> cornea.day().equals(day.orElseThrow()))
                .sorted(Comparator.comparing(cornea -> cornea.measured().evidence()))
                .toList();
        List<Measured<Keratometry>> measured =
                sameDay.stream().map(Dated::measured).toList();
        contradiction("mean corneal power", side, measured, Keratometry::meanPower, policy.sameDayPower(), reasons);
        return sameDay.stream().findFirst();
    }

    private static <T, Q extends Quantity & Comparable<Q>> void contradiction(
            String what,
            Laterality side,
            List<Measured<T>> sameDay,
            Function<T, Q> size,
            Limit<Q> most,
            List<Finding> reasons) {
        Comparator<Measured<T>> bySize = Comparator.comparing(each -> size.apply(each.value()));
        if (sameDay.isEmpty()) {
            return;
        }
        Measured<T> least = sameDay.stream().min(bySize).orElseThrow();
        Measured<T> greatest = sameDay.stream().max(bySize).orElseThrow();
        Q low = size.apply(least.value());
        Q high = size.apply(greatest.value());
        if (high.value() - low.value() > most.value().value()) {
            reasons.add(Finding.of(
                    MEASUREMENTS_CONTRADICT,
                    List.of(least.evidence(), greatest.evidence()),
                    what,
                    side,
                    low.rounded(),
                    high.rounded()));
        }
    }

    private static Biometry assemble(Laterality side, Length length, Dated<Keratometry> cornea, Readings readings) {
        LocalDate earlier = length.day().isBefore(cornea.day()) ? length.day() : cornea.day();
        Details details = new Details(
                ofDay(readings.chamberDepths(), length.day()),
                ofDay(readings.lensThicknesses(), length.day()),
                length.scatter(),
                length.signal(),
                length.velocity());
        return new Biometry(side, length.method(), earlier, length.measured(), cornea.measured(), details);
    }

    private static Optional<Measured<Millimetres>> ofDay(List<Dated<Millimetres>> readings, LocalDate day) {
        return readings.stream()
                .filter(reading -> reading.day().equals(day))
                .map(Dated::measured)
                .min(Comparator.comparing(Measured::evidence));
    }
}
