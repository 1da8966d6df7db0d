package org.lensward.record;

import static org.lensward.record.MeasurementCode.ACHIEVED_REFRACTION;
import static org.lensward.record.MeasurementCode.CORRECTED_ACUITY;
import static org.lensward.record.MeasurementCode.REFRACTION_AXIS;
import static org.lensward.record.MeasurementCode.REFRACTION_CYLINDER;
import static org.lensward.record.MeasurementCode.REFRACTION_SPHERE;
import static org.lensward.record.MeasurementCode.VERTEX_DISTANCE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.Type;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.outcome.Acuity;
import org.lensward.outcome.Refraction;
import org.lensward.outcome.Refraction.Cylinder;
import org.lensward.outcome.Refraction.Form;
import org.lensward.outcome.Refraction.Way;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** Reads refractions as they were written down: sphere, cylinder in either form, axis, vertex distance, acuity, and how they were found. */
final class RefractionReader {

    /** SNOMED CT: subjective refraction (procedure). */
    private static final String SUBJECTIVE = "397277005";

    private static final String FORM = Systems.extension("cylinder-form");

    private final List<MeasurementGroup> groups;
    private final List<Unused> unused;
    private final List<Finding> doubts = new ArrayList<>();
    private final ScalarReader scalars = new ScalarReader(doubts);

    private RefractionReader(List<MeasurementGroup> groups, List<Unused> unused) {
        this.groups = groups;
        this.unused = unused;
    }

    /** Every refraction of either eye that says its eye, its day and how it was found; the rest is named among the unused. */
    static List<RecordedRefraction> read(List<MeasurementGroup> groups, List<Unused> unused) {
        RefractionReader reader = new RefractionReader(groups, unused);
        return groups.stream()
                .filter(group -> group.scalars().containsKey(REFRACTION_SPHERE)
                        || group.scalars().containsKey(ACHIEVED_REFRACTION))
                .flatMap(group -> reader.read(group).stream())
                .toList();
    }

    private Optional<RecordedRefraction> read(MeasurementGroup group) {
        Optional<Unused.Reason> trouble = trouble(group);
        if (trouble.isPresent()) {
            unused.add(new Unused(trouble.get(), group.evidence()));
            return Optional.empty();
        }
        MeasurementCode code = group.scalars().containsKey(REFRACTION_SPHERE) ? REFRACTION_SPHERE : ACHIEVED_REFRACTION;
        doubts.clear();
        Optional<Dioptres> sphere = number(group, code).map(Dioptres::of);
        Optional<Cylinder> cylinder = cylinder(group);
        Optional<Millimetres> vertex = number(group, VERTEX_DISTANCE).map(Millimetres::of);
        Optional<Acuity> acuity = acuity(group);
        if (sphere.isEmpty() || unreadable()) {
            unused.add(new Unused(Unused.Reason.VALUE_UNREADABLE, evidence(group)));
            return Optional.empty();
        }
        return Optional.of(new RecordedRefraction(
                group.evidence(),
                new Refraction(
                        group.eyes().iterator().next(),
                        group.day().orElseThrow(),
                        way(group).orElseThrow(),
                        sphere.get(),
                        cylinder,
                        vertex,
                        acuity)));
    }

    /** A unit that was put right leaves a note; anything else left a number out. */
    private boolean unreadable() {
        return doubts.stream().anyMatch(each -> each.code() != FindingCode.UNIT_NORMALISED);
    }

    private Evidence evidence(MeasurementGroup group) {
        return doubts.stream()
                .flatMap(each -> each.evidence().stream())
                .findFirst()
                .orElse(group.evidence());
    }

    private static Optional<Unused.Reason> trouble(MeasurementGroup group) {
        if (group.eyes().isEmpty()) {
            return Optional.of(Unused.Reason.REFRACTION_WITHOUT_EYE);
        }
        if (group.eyes().size() > 1) {
            return Optional.of(Unused.Reason.REFRACTION_OF_TWO_EYES);
        }
        if (group.day().isEmpty()) {
            return Optional.of(Unused.Reason.REFRACTION_WITHOUT_DATE);
        }
        return way(group).isEmpty() ? Optional.of(Unused.Reason.REFRACTION_METHOD_NOT_TOLD) : Optional.empty();
    }

    private static Optional<Way> way(MeasurementGroup group) {
        for (CodeableConcept method : group.methods()) {
            if (Codes.has(method, Systems.SNOMED, SUBJECTIVE)) {
                return Optional.of(Way.SUBJECTIVE);
            }
            Optional<Way> ours = Codes.in(method, Systems.REFRACTION_METHOD).flatMap(code -> Stream.of(Way.values())
                    .filter(each -> each.code().equals(code))
                    .findFirst());
            if (ours.isPresent()) {
                return ours;
            }
        }
        return Optional.empty();
    }

    /** A number carries its sign; where the place writes cylinders without one, the value says so by an extension. */
    private Optional<Cylinder> cylinder(MeasurementGroup group) {
        Optional<Degrees> axis = number(group, REFRACTION_AXIS).map(Degrees::of);
        return number(group, REFRACTION_CYLINDER).map(Dioptres::of).map(power -> form(group)
                .map(form -> new Cylinder(power.distanceTo(Dioptres.of(0)), form, axis))
                .orElseGet(() -> Cylinder.signed(power, axis)));
    }

    private static Optional<Form> form(MeasurementGroup group) {
        return Optional.ofNullable(group.scalars().get(REFRACTION_CYLINDER))
                .map(Scalar::value)
                .map(value -> value.getExtensionByUrl(FORM))
                .map(Extension::getValue)
                .map(Type::primitiveValue)
                .map(code -> code.toUpperCase(Locale.ROOT).replace('-', '_'))
                .flatMap(name -> Stream.of(Form.values())
                        .filter(each -> each.name().equals(name))
                        .findFirst());
    }

    /** With the refraction, or by itself of the same eye on the same day. */
    private Optional<Acuity> acuity(MeasurementGroup group) {
        LocalDate day = group.day().orElseThrow();
        return Stream.concat(
                        Stream.of(group),
                        groups.stream()
                                .filter(each -> each.eyes().equals(group.eyes()))
                                .filter(each -> each.day().filter(day::equals).isPresent()))
                .flatMap(each -> number(each, CORRECTED_ACUITY).stream())
                .findFirst()
                .map(logMar -> Acuity.ofLogMar(PureNumber.of(logMar)));
    }

    private Optional<Double> number(MeasurementGroup group, MeasurementCode code) {
        return scalars.read(group, code).map(Measured::value);
    }
}
