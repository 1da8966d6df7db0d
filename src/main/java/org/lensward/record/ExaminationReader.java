package org.lensward.record;

import static org.lensward.finding.FindingCode.EXAMINATION_NOT_USED;
import static org.lensward.record.MeasurementCode.CLOTTING_INR;
import static org.lensward.record.MeasurementCode.CORNEAL_THICKNESS;
import static org.lensward.record.MeasurementCode.ENDOTHELIAL_DENSITY;
import static org.lensward.record.MeasurementCode.INTRAOCULAR_PRESSURE;
import static org.lensward.record.MeasurementCode.OPENING_DECENTRATION;
import static org.lensward.record.MeasurementCode.OPENING_DIAMETER;
import static org.lensward.record.MeasurementCode.ZONULE_LOSS;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.lensward.eye.Examination;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.eye.Readings.Dated;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.quantity.CellsPerSquareMillimetre;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.MillimetresOfMercury;
import org.lensward.quantity.PureNumber;

/**
 * Reads what was measured for the sake of the operation itself, the latest of each. A doubtful one is left out with a caution: it
 * decides no lens, so it withholds none.
 */
final class ExaminationReader {

    private final Laterality eye;
    private final LocalDate today;
    private final List<MeasurementGroup> groups;
    private final List<Finding> found;

    private ExaminationReader(List<MeasurementGroup> groups, Laterality eye, LocalDate today, List<Finding> found) {
        this.eye = eye;
        this.today = today;
        this.groups = groups.stream()
                .filter(MeasurementGroup::ofExamination)
                .sorted(Comparator.comparing(
                                (MeasurementGroup group) -> group.day().orElse(LocalDate.MIN))
                        .reversed()
                        .thenComparing(MeasurementGroup::evidence))
                .toList();
        this.found = found;
    }

    /** Of all groups of a patient, those of this eye, and what is the person's own. */
    static Examination read(List<MeasurementGroup> groups, Laterality eye, LocalDate today, List<Finding> found) {
        ExaminationReader reader = new ExaminationReader(groups, eye, today, found);
        return new Examination(
                reader.ofEye(INTRAOCULAR_PRESSURE, MillimetresOfMercury::of),
                reader.ofEye(ENDOTHELIAL_DENSITY, CellsPerSquareMillimetre::of),
                reader.ofEye(CORNEAL_THICKNESS, Millimetres::of),
                reader.ofEye(ZONULE_LOSS, PureNumber::of),
                reader.latest(CLOTTING_INR, PureNumber::of),
                reader.ofEye(OPENING_DIAMETER, Millimetres::of),
                reader.ofEye(OPENING_DECENTRATION, Millimetres::of));
    }

    private <T> Optional<Measured<T>> ofEye(MeasurementCode code, Function<Double, T> unit) {
        return latest(code, unit).map(Dated::measured);
    }

    private <T> Optional<Dated<T>> latest(MeasurementCode code, Function<Double, T> unit) {
        return groups.stream()
                .filter(group -> group.scalars().containsKey(code))
                .filter(group -> code == CLOTTING_INR || concernsThisEye(group))
                .flatMap(group -> value(group, code)
                        .map(value -> new Dated<>(
                                new Measured<>(unit.apply(value.value()), value.evidence()),
                                group.day().orElseThrow()))
                        .stream())
                .findFirst();
    }

    private boolean concernsThisEye(MeasurementGroup group) {
        if (group.eyes().isEmpty() || group.both()) {
            doubt(group.evidence(), "the " + group.words() + " does not say of which one eye it is");
            return false;
        }
        return group.eyes().contains(eye);
    }

    private Optional<Measured<Double>> value(MeasurementGroup group, MeasurementCode code) {
        if (group.eyes().size() > 1) {
            doubt(group.evidence(), "the " + group.words() + " names two different eyes");
            return Optional.empty();
        }
        if (group.day().filter(day -> !day.isAfter(today)).isEmpty()) {
            doubt(group.evidence(), "the " + group.words() + " has no date or one that has not come yet");
            return Optional.empty();
        }
        List<Finding> doubts = new ArrayList<>();
        Optional<Measured<Double>> value = new ScalarReader(doubts).read(group, code);
        if (value.isEmpty()) {
            doubts.forEach(each -> doubt(each.evidence().get(0), each.message().replaceAll("\\.$", "")));
        }
        return value;
    }

    private void doubt(Evidence evidence, String why) {
        found.add(Finding.of(EXAMINATION_NOT_USED, evidence, why));
    }
}
