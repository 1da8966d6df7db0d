package org.lensward.record;

import static org.lensward.record.MeasurementCode.ACHIEVED_REFRACTION;
import static org.lensward.record.MeasurementCode.CORNEAL_POWER_BEFORE_LASER;
import static org.lensward.record.MeasurementCode.CORNEAL_POWER_SD;
import static org.lensward.record.MeasurementCode.DEVICE_REPORTED_POWER;
import static org.lensward.record.MeasurementCode.REFRACTION_AFTER_LASER;
import static org.lensward.record.MeasurementCode.REFRACTION_BEFORE_LASER;
import static org.lensward.record.MeasurementCode.RIGID_LENSES_OUT;
import static org.lensward.record.MeasurementCode.SOFT_LENSES_OUT;
import static org.lensward.record.MeasurementCode.SPHERICAL_EQUIVALENT;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.lensward.eye.BeforeLaser;
import org.lensward.eye.DeviceReport;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.eye.OtherReadings;
import org.lensward.finding.Finding;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;

/** Reads what only some plans ask for: the eye's refraction, figures from before a laser, powers the device computed. */
final class OtherReadingsReader {

    private final List<MeasurementGroup> groups;
    private final ScalarReader scalars;

    private OtherReadingsReader(List<MeasurementGroup> groups, List<Finding> found) {
        this.groups = groups;
        this.scalars = new ScalarReader(found);
    }

    /** Of the groups that certainly belong to this eye and to the past; the doubtful ones are reported where biometry is read. */
    static OtherReadings read(List<MeasurementGroup> all, Laterality eye, LocalDate today, List<Finding> found) {
        List<MeasurementGroup> certain = all.stream()
                .filter(group -> group.eyes().equals(Set.of(eye)))
                .filter(group -> group.day().filter(day -> !day.isAfter(today)).isPresent())
                .sorted(Comparator.comparing(
                                (MeasurementGroup group) -> group.day().orElseThrow())
                        .reversed()
                        .thenComparing(MeasurementGroup::evidence))
                .toList();
        OtherReadingsReader reader = new OtherReadingsReader(certain, found);
        return new OtherReadings(
                reader.latest(ACHIEVED_REFRACTION, SPHERICAL_EQUIVALENT),
                reader.beforeLaser(),
                reader.reports(),
                reader.latest(CORNEAL_POWER_SD),
                reader.days(SOFT_LENSES_OUT),
                reader.days(RIGID_LENSES_OUT));
    }

    private Optional<BeforeLaser> beforeLaser() {
        return latest(CORNEAL_POWER_BEFORE_LASER).flatMap(power -> latest(REFRACTION_BEFORE_LASER)
                .flatMap(before -> latest(REFRACTION_AFTER_LASER).map(after -> new BeforeLaser(power, before, after))));
    }

    private Optional<Measured<Dioptres>> latest(MeasurementCode... codes) {
        return groups.stream()
                .flatMap(group -> Stream.of(codes).flatMap(code -> dioptres(group, code).stream()))
                .findFirst();
    }

    private Optional<Measured<PureNumber>> days(MeasurementCode code) {
        return groups.stream()
                .flatMap(group -> scalars.read(group, code).stream())
                .findFirst()
                .map(days -> new Measured<>(PureNumber.of(days.value()), days.evidence()));
    }

    private List<DeviceReport> reports() {
        return groups.stream()
                .flatMap(group -> dioptres(group, DEVICE_REPORTED_POWER).stream()
                        .flatMap(power ->
                                group.lenses().stream().map(lens -> new DeviceReport(method(group), lens, power))))
                .toList();
    }

    private static String method(MeasurementGroup group) {
        return group.methods().stream()
                .filter(concept -> !concept.isEmpty())
                .map(Codes::words)
                .findFirst()
                .orElse("a method it does not name");
    }

    private Optional<Measured<Dioptres>> dioptres(MeasurementGroup group, MeasurementCode code) {
        return scalars.read(group, code).map(each -> new Measured<>(Dioptres.of(each.value()), each.evidence()));
    }
}
