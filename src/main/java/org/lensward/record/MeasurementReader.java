package org.lensward.record;

import static org.lensward.finding.FindingCode.DATE_IN_FUTURE;
import static org.lensward.finding.FindingCode.DATE_MISSING;
import static org.lensward.finding.FindingCode.INDEX_MISSING;
import static org.lensward.finding.FindingCode.MEASUREMENT_EYES_CONFLICT;
import static org.lensward.finding.FindingCode.MEASUREMENT_FOR_BOTH_EYES;
import static org.lensward.finding.FindingCode.MEASUREMENT_WITHOUT_EYE;
import static org.lensward.finding.FindingCode.MERIDIANS_SWAPPED;
import static org.lensward.finding.FindingCode.METHOD_UNKNOWN;
import static org.lensward.record.MeasurementCode.ACHIEVED_REFRACTION;
import static org.lensward.record.MeasurementCode.ANTERIOR_CHAMBER_DEPTH;
import static org.lensward.record.MeasurementCode.AXIAL_LENGTH;
import static org.lensward.record.MeasurementCode.AXIAL_LENGTH_SD;
import static org.lensward.record.MeasurementCode.AXIAL_LENGTH_SNR;
import static org.lensward.record.MeasurementCode.DILATED_PUPIL;
import static org.lensward.record.MeasurementCode.KERATOMETRIC_INDEX;
import static org.lensward.record.MeasurementCode.KERATOMETRY_FLAT_POWER;
import static org.lensward.record.MeasurementCode.KERATOMETRY_FLAT_RADIUS;
import static org.lensward.record.MeasurementCode.KERATOMETRY_STEEP_AXIS;
import static org.lensward.record.MeasurementCode.KERATOMETRY_STEEP_POWER;
import static org.lensward.record.MeasurementCode.KERATOMETRY_STEEP_RADIUS;
import static org.lensward.record.MeasurementCode.LENS_THICKNESS;
import static org.lensward.record.MeasurementCode.PREDICTED_REFRACTION;
import static org.lensward.record.MeasurementCode.SOUND_VELOCITY;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.lensward.eye.BiometryMethod;
import org.lensward.eye.Keratometry;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.eye.Readings;
import org.lensward.eye.Readings.Dated;
import org.lensward.eye.Readings.Length;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.MetresPerSecond;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;
import org.lensward.quantity.RefractiveIndex;

/** Reads the measurements of one eye out of a patient's groups. A group that cannot be trusted yields findings, not numbers. */
final class MeasurementReader {

    private final LocalDate today;
    private final List<Finding> found = new ArrayList<>();
    private final ScalarReader scalars = new ScalarReader(found);
    private final List<Length> lengths = new ArrayList<>();
    private final List<Dated<Keratometry>> corneas = new ArrayList<>();
    private final List<Dated<Millimetres>> depths = new ArrayList<>();
    private final List<Dated<Millimetres>> thicknesses = new ArrayList<>();
    private final List<Dated<Millimetres>> pupils = new ArrayList<>();
    private final List<Dated<Dioptres>> predicted = new ArrayList<>();
    private final List<Dated<Dioptres>> achieved = new ArrayList<>();

    private MeasurementReader(LocalDate today) {
        this.today = today;
    }

    /**
     * What the groups say of one eye. A group without a side, or with two, concerns either eye.
     *
     * @param groups all of the patient's
     * @param eye which eye
     * @param today the day of reading; a measurement dated later is refused
     */
    static EyeMeasurements read(List<MeasurementGroup> groups, Laterality eye, LocalDate today) {
        MeasurementReader reader = new MeasurementReader(today);
        groups.stream()
                .filter(group -> !group.ofExamination())
                .filter(group -> group.eyes().isEmpty() || group.eyes().contains(eye))
                .forEach(reader::read);
        return reader.result();
    }

    private void read(MeasurementGroup group) {
        Optional<LocalDate> day = trustedDay(group);
        if (sided(group) && day.isPresent()) {
            length(group, day.get());
            cornea(group, day.get());
            millimetres(group, ANTERIOR_CHAMBER_DEPTH, day.get(), depths);
            millimetres(group, LENS_THICKNESS, day.get(), thicknesses);
            millimetres(group, DILATED_PUPIL, day.get(), pupils);
            dioptres(group, PREDICTED_REFRACTION, day.get(), predicted);
            dioptres(group, ACHIEVED_REFRACTION, day.get(), achieved);
        }
    }

    private boolean sided(MeasurementGroup group) {
        Evidence site = group.evidence().at("bodySite");
        if (group.eyes().isEmpty()) {
            found.add(Finding.of(MEASUREMENT_WITHOUT_EYE, site, group.words()));
        } else if (group.both()) {
            found.add(Finding.of(MEASUREMENT_FOR_BOTH_EYES, site, group.words()));
        } else if (group.eyes().size() > 1) {
            found.add(Finding.of(MEASUREMENT_EYES_CONFLICT, site, group.words(), EyeCodes.words(group.eyes())));
        }
        return group.eyes().size() == 1;
    }

    private Optional<LocalDate> trustedDay(MeasurementGroup group) {
        Evidence effective = group.evidence().at("effective");
        if (group.day().isEmpty()) {
            found.add(Finding.of(DATE_MISSING, effective, group.words()));
        } else if (group.day().get().isAfter(today)) {
            found.add(Finding.of(
                    DATE_IN_FUTURE, effective, group.words(), group.day().get()));
            return Optional.empty();
        }
        return group.day();
    }

    private void length(MeasurementGroup group, LocalDate day) {
        Optional<Measured<Double>> length = scalars.read(group, AXIAL_LENGTH);
        if (length.isEmpty()) {
            return;
        }
        Optional<BiometryMethod> method = method(group.methods());
        if (method.isEmpty()) {
            found.add(Finding.of(METHOD_UNKNOWN, group.evidence().at("method")));
            return;
        }
        lengths.add(new Length(
                measured(length.get(), Millimetres.of(length.get().value())),
                day,
                method.get(),
                scalars.read(group, AXIAL_LENGTH_SD).map(each -> measured(each, Millimetres.of(each.value()))),
                scalars.read(group, AXIAL_LENGTH_SNR).map(each -> measured(each, PureNumber.of(each.value()))),
                scalars.read(group, SOUND_VELOCITY).map(each -> measured(each, MetresPerSecond.of(each.value())))));
    }

    static Optional<BiometryMethod> method(List<CodeableConcept> methods) {
        for (CodeableConcept method : methods) {
            if (Codes.has(method, Systems.BIOMETRY_METHOD, "optical")) {
                return Optional.of(BiometryMethod.OPTICAL);
            }
            if (Codes.has(method, Systems.DICOM, "111751")) {
                return Optional.of(BiometryMethod.IMMERSION_ULTRASOUND);
            }
            if (Codes.has(method, Systems.DICOM, "111750")) {
                return Optional.of(BiometryMethod.CONTACT_ULTRASOUND);
            }
        }
        return Optional.empty();
    }

    private void cornea(MeasurementGroup group, LocalDate day) {
        if (group.scalars().keySet().stream().noneMatch(MeasurementCode::ofCornea)) {
            return;
        }
        Optional<Degrees> axis = scalars.read(group, KERATOMETRY_STEEP_AXIS).map(each -> Degrees.of(each.value()));
        Evidence evidence = group.evidence();
        boolean radii = group.scalars().containsKey(KERATOMETRY_FLAT_RADIUS)
                || group.scalars().containsKey(KERATOMETRY_STEEP_RADIUS);
        Optional<Keratometry> cornea = radii ? ofRadii(group, axis) : ofPowers(group, axis);
        cornea.ifPresent(each -> corneas.add(new Dated<>(new Measured<>(each, evidence), day)));
    }

    private Optional<Keratometry> ofRadii(MeasurementGroup group, Optional<Degrees> axis) {
        Optional<Double> flat = required(group, KERATOMETRY_FLAT_RADIUS);
        Optional<Double> steep = required(group, KERATOMETRY_STEEP_RADIUS);
        if (flat.isEmpty() || steep.isEmpty() || inconsistent(group, steep.get() > flat.get())) {
            return Optional.empty();
        }
        return Optional.of(new Keratometry(Millimetres.of(flat.get()), Millimetres.of(steep.get()), axis));
    }

    private Optional<Keratometry> ofPowers(MeasurementGroup group, Optional<Degrees> axis) {
        Optional<Double> flat = required(group, KERATOMETRY_FLAT_POWER);
        Optional<Double> steep = required(group, KERATOMETRY_STEEP_POWER);
        Optional<Double> index = scalars.read(group, KERATOMETRIC_INDEX).map(Measured::value);
        if (!group.scalars().containsKey(KERATOMETRIC_INDEX)) {
            found.add(Finding.of(INDEX_MISSING, group.evidence().at("component")));
        }
        if (flat.isEmpty() || steep.isEmpty() || index.isEmpty() || inconsistent(group, flat.get() > steep.get())) {
            return Optional.empty();
        }
        return Optional.of(Keratometry.ofPowers(
                Dioptres.of(flat.get()), Dioptres.of(steep.get()), RefractiveIndex.of(index.get()), axis));
    }

    /** Labels the wrong way round leave it open to which meridian the axis belongs. */
    private boolean inconsistent(MeasurementGroup group, boolean swapped) {
        if (swapped) {
            found.add(Finding.of(MERIDIANS_SWAPPED, group.evidence().at("component")));
        }
        return swapped;
    }

    private Optional<Double> required(MeasurementGroup group, MeasurementCode code) {
        Scalar missing = new Scalar(null, group.evidence().at("component"));
        return scalars.read(code, group.scalars().getOrDefault(code, missing));
    }

    private void millimetres(
            MeasurementGroup group, MeasurementCode code, LocalDate day, List<Dated<Millimetres>> into) {
        scalars.read(group, code)
                .ifPresent(each -> into.add(new Dated<>(measured(each, Millimetres.of(each.value())), day)));
    }

    private void dioptres(MeasurementGroup group, MeasurementCode code, LocalDate day, List<Dated<Dioptres>> into) {
        scalars.read(group, code)
                .ifPresent(each -> into.add(new Dated<>(measured(each, Dioptres.of(each.value())), day)));
    }

    private static <T> Measured<T> measured(Measured<Double> number, T value) {
        return new Measured<>(value, number.evidence());
    }

    private EyeMeasurements result() {
        Optional<Measured<Dioptres>> surprise =
                latest(achieved).flatMap(after -> latest(predicted).map(before -> measuredDifference(after, before)));
        List<Evidence> also = latest(predicted).map(Measured::evidence).stream().toList();
        return new EyeMeasurements(
                new Readings(lengths, corneas, depths, thicknesses), latest(pupils), surprise, also, found);
    }

    private static Measured<Dioptres> measuredDifference(Measured<Dioptres> after, Measured<Dioptres> before) {
        return new Measured<>(after.value().minus(before.value()), after.evidence());
    }

    private static <T> Optional<Measured<T>> latest(List<Dated<T>> readings) {
        return readings.stream()
                .max(Comparator.comparing((Dated<T> reading) -> reading.day())
                        .thenComparing(reading -> reading.measured().evidence()))
                .map(Dated::measured);
    }
}
