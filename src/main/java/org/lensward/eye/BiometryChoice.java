package org.lensward.eye;

import static org.lensward.finding.FindingCode.AXIAL_LENGTH_MISSING;
import static org.lensward.finding.FindingCode.KERATOMETRY_MISSING;
import static org.lensward.finding.FindingCode.MEASURED_MORE_THAN_ONCE;
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
        List<Finding> notes = new ArrayList<>();
        Repeats repeats = new Repeats(side, reasons, notes);
        Optional<Length> length = length(readings.lengths(), repeats);
        Optional<Dated<Keratometry>> cornea = cornea(readings.corneas(), length.map(Length::day), repeats);
        if (length.isEmpty()) {
            reasons.add(0, Finding.of(AXIAL_LENGTH_MISSING, asked, side));
        }
        if (cornea.isEmpty()) {
            reasons.add(Finding.of(KERATOMETRY_MISSING, asked, side));
        }
        return reasons.isEmpty()
                ? Outcome.ready(assemble(side, length.orElseThrow(), cornea.orElseThrow(), readings), notes)
                : Outcome.withheld(reasons);
    }

    private Optional<Length> length(List<Length> lengths, Repeats repeats) {
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
        repeats.compare("axial length", comparable, Function.identity(), policy.sameDayLength());
        return sameDay.stream().findFirst();
    }

    private Optional<Dated<Keratometry>> cornea(
            List<Dated<Keratometry>> corneas, Optional<LocalDate> lengthDay, Repeats repeats) {
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
        repeats.compare("mean corneal power", measured, Keratometry::meanPower, policy.sameDayPower());
        return sameDay.stream().findFirst();
    }

    /**
     * What several readings of one day say of each other.
     *
     * @param side whose eye
     * @param reasons to withhold
     * @param notes to know
     */
    private record Repeats(Laterality side, List<Finding> reasons, List<Finding> notes) {

        <T, Q extends Quantity & Comparable<Q>> void compare(
                String what, List<Measured<T>> sameDay, Function<T, Q> size, Limit<Q> most) {
            if (sameDay.isEmpty()) {
                return;
            }
            Comparator<Measured<T>> bySize = Comparator.comparing(each -> size.apply(each.value()));
            Measured<T> least = sameDay.stream().min(bySize).orElseThrow();
            Measured<T> greatest = sameDay.stream().max(bySize).orElseThrow();
            Q low = size.apply(least.value());
            Q high = size.apply(greatest.value());
            double apart = high.value() - low.value();
            if (apart > 0) {
                boolean contradict = apart > most.value().value();
                (contradict ? reasons : notes)
                        .add(Finding.of(
                                contradict ? MEASUREMENTS_CONTRADICT : MEASURED_MORE_THAN_ONCE,
                                List.of(least.evidence(), greatest.evidence()),
                                what,
                                side,
                                low.rounded(),
                                high.rounded()));
            }
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
