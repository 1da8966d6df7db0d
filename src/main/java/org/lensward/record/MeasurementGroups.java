package org.lensward.record;

import static org.lensward.finding.FindingCode.CODE_UNMAPPED;
import static org.lensward.finding.FindingCode.MEASUREMENT_NOT_FINAL;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Patient;
import org.lensward.eye.Laterality;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;

/** Sorts a patient's Observations into groups of values that belong together, whatever shape they were sent in. */
final class MeasurementGroups {

    private static final Set<ObservationStatus> FINAL =
            EnumSet.of(ObservationStatus.FINAL, ObservationStatus.AMENDED, ObservationStatus.CORRECTED);

    private static final Set<ObservationStatus> WITHDRAWN =
            EnumSet.of(ObservationStatus.ENTEREDINERROR, ObservationStatus.CANCELLED);

    private final Shelf shelf;
    private final Evidences evidences;
    private final EyeCodes eyeCodes;
    private final List<Evidence> also = new ArrayList<>();
    private final List<Finding> found = new ArrayList<>();

    MeasurementGroups(Shelf shelf, Evidences evidences) {
        this.shelf = shelf;
        this.evidences = evidences;
        this.eyeCodes = new EyeCodes(shelf);
    }

    /** The panels and pieces that lent something to another Observation. */
    List<Evidence> also() {
        return also;
    }

    /** Whether the observation has been released and not taken back: final, amended or corrected. */
    static boolean isFinal(Observation observation) {
        return FINAL.contains(observation.getStatus());
    }

    /** What was noticed while sorting. */
    List<Finding> found() {
        return found;
    }

    /** The groups, in the order of the record. */
    List<MeasurementGroup> of(Patient patient) {
        List<Observation> own = shelf.all(Observation.class)
                .filter(observation -> Shelf.refers(List.of(observation.getSubject()), patient))
                .filter(observation -> !WITHDRAWN.contains(observation.getStatus()))
                .toList();
        List<MeasurementGroup> groups = new ArrayList<>();
        List<MeasurementGroup> corneas = new ArrayList<>();
        for (Observation observation : own) {
            Optional<MeasurementGroup> group = group(observation, panel(observation, own));
            group.filter(each -> !each.pieceOfCornea()).ifPresent(groups::add);
            group.filter(MeasurementGroup::pieceOfCornea).ifPresent(piece -> join(corneas, piece));
        }
        groups.addAll(corneas);
        return groups;
    }

    /** Joins the piece to the first cornea of its eye and day that lacks it; a second value begins a second cornea. */
    private void join(List<MeasurementGroup> corneas, MeasurementGroup piece) {
        also.add(piece.evidence());
        for (int index = 0; index < corneas.size(); index++) {
            if (corneas.get(index).lacks(piece)) {
                corneas.set(index, corneas.get(index).with(piece));
                return;
            }
        }
        corneas.add(piece);
    }

    private static Optional<Observation> panel(Observation member, List<Observation> all) {
        return all.stream()
                .filter(MeasurementGroups::isFinal)
                .filter(panel -> Shelf.refers(panel.getHasMember(), member))
                .findFirst();
    }

    private Optional<MeasurementGroup> group(Observation observation, Optional<Observation> panel) {
        Optional<MeasurementCode> code = MeasurementCode.of(observation.getCode());
        if (code.isEmpty()) {
            unmapped(observation);
            return Optional.empty();
        }
        if (!isFinal(observation)) {
            notFinal(observation, code.get());
            return Optional.empty();
        }
        if (code.get() == MeasurementCode.TARGET_REFRACTION) {
            return Optional.empty(); // a target is the booking's and is read with it
        }
        Map<MeasurementCode, Scalar> scalars = scalars(observation, code.get());
        return scalars.isEmpty() ? Optional.empty() : Optional.of(group(observation, panel, code.get(), scalars));
    }

    private MeasurementGroup group(
            Observation observation,
            Optional<Observation> panel,
            MeasurementCode code,
            Map<MeasurementCode, Scalar> scalars) {
        panel.ifPresent(each -> also.add(evidences.of(each, "")));
        List<Observation> speakers =
                Stream.concat(Stream.of(observation), panel.stream()).toList();
        List<CodeableConcept> sites =
                speakers.stream().map(Observation::getBodySite).toList();
        Set<Laterality> eyes = EnumSet.noneOf(Laterality.class);
        speakers.forEach(each -> eyes.addAll(eyeCodes.eyes(each.getCode(), List.of(each.getBodySite()))));
        // A component's code may carry a side of its own, which must not be read as the other's.
        observation.getComponent().forEach(each -> eyes.addAll(eyeCodes.eyes(each.getCode(), List.of())));
        Optional<LocalDate> day = speakers.stream()
                .flatMap(each -> Dates.day(each.getEffective()).stream())
                .findFirst();
        List<CodeableConcept> methods =
                speakers.stream().map(Observation::getMethod).toList();
        return new MeasurementGroup(
                evidences.of(observation, ""),
                code.words(),
                eyes,
                EyeCodes.statesBoth(sites),
                day,
                methods,
                scalars,
                observation.getFocus().stream().map(Shelf::name).toList());
    }

    private Map<MeasurementCode, Scalar> scalars(Observation observation, MeasurementCode code) {
        Map<MeasurementCode, Scalar> scalars = new EnumMap<>(MeasurementCode.class);
        if (code.kind() != UnitKind.NONE) {
            scalars.put(code, new Scalar(observation.getValue(), evidences.of(observation, "value")));
        }
        List<ObservationComponentComponent> components = observation.getComponent();
        for (int index = 0; index < components.size(); index++) {
            ObservationComponentComponent component = components.get(index);
            String field = "component[" + index + "].value";
            MeasurementCode.of(component.getCode())
                    .filter(each -> each.kind() != UnitKind.NONE)
                    .ifPresent(each -> scalars.merge(
                            each,
                            new Scalar(component.getValue(), evidences.of(observation, field)),
                            MeasurementGroups::oneValue));
        }
        return scalars;
    }

    /** Two different values under one code are none. */
    private static Scalar oneValue(Scalar first, Scalar second) {
        boolean same = first.value() != null && first.value().equalsDeep(second.value());
        return same ? first : new Scalar(null, second.evidence());
    }

    private void unmapped(Observation observation) {
        boolean sign = Codes.in(observation.getCode(), Systems.SIGN).isPresent();
        if (!sign && eyeCodes.isEye(List.of(observation.getBodySite()))) {
            found.add(Finding.of(CODE_UNMAPPED, evidences.of(observation, "code"), Codes.words(observation.getCode())));
        }
    }

    private void notFinal(Observation observation, MeasurementCode code) {
        boolean ours = observation.getIdentifier().stream()
                .anyMatch(identifier -> Systems.PLAN_IDENTIFIER.equals(identifier.getSystem()));
        if (!ours) {
            String status = observation.hasStatus() ? observation.getStatus().toCode() : "without status";
            found.add(Finding.of(MEASUREMENT_NOT_FINAL, evidences.of(observation, "status"), code.words(), status));
        }
    }
}
