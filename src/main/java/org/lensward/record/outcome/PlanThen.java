package org.lensward.record.outcome;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.DecimalType;
import org.hl7.fhir.r4.model.DeviceRequest.RequestIntent;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.RiskAssessment;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;
import org.lensward.eye.Biometry;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.optics.toric.SphereCylinder;
import org.lensward.outcome.BeforeSurgery;
import org.lensward.outcome.ImplantedLens;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;
import org.lensward.record.Codes;
import org.lensward.record.FormulaCodes;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;
import org.lensward.record.Systems;

/** What was foretold of one operation, as it was recorded when it was planned. */
final class PlanThen {

    private static final String ODDS = Systems.extension("odds-factor");
    private static final String TARGET = Systems.extension("target-refraction");
    private static final String LABELLED = Systems.extension("labelled-power");

    private final Shelf shelf;
    private final Procedure operation;
    private final List<Observation> predictions;

    PlanThen(Shelf shelf, Procedure operation) {
        this.shelf = shelf;
        this.operation = operation;
        this.predictions = shelf.all(Observation.class)
                .filter(each -> Codes.has(each.getCode(), Systems.MEASUREMENT, "predicted-refraction"))
                .filter(each -> each.getStatus() != ObservationStatus.CANCELLED
                        && each.getStatus() != ObservationStatus.ENTEREDINERROR)
                .filter(each -> Shelf.refers(each.getPartOf(), operation))
                .toList();
    }

    /** The Observations the plan rested on. */
    Set<String> biometry() {
        return predictions.stream()
                .flatMap(each -> each.getDerivedFrom().stream())
                .map(Shelf::name)
                .collect(Collectors.toSet());
    }

    /** With the biometry of then and the lens that was implanted. */
    BeforeSurgery before(Optional<Biometry> biometry, ImplantedLens lens) {
        boolean sameModel = plannedModel().filter(lens.model()::equals).isPresent();
        LensConstants constants = FormulaCodes.constants(predictions);
        return new BeforeSurgery(
                biometry,
                Optional.of(constants).filter(each -> sameModel && !each.isEmpty()),
                sameModel ? predicted(lens.power()) : Map.of(),
                Optional.ofNullable(operation.getExtensionByUrl(TARGET))
                        .flatMap(each -> number(each.getValue()))
                        .map(Dioptres::of),
                rupture(),
                odds(),
                sameModel ? residual() : Optional.empty());
    }

    private Optional<String> plannedModel() {
        return new LensInEye(shelf, new ArrayList<>())
                .requests(operation)
                .filter(each -> each.getIntent() == RequestIntent.PLAN)
                .map(LensInEye::model)
                .findFirst();
    }

    private Map<FormulaName, Dioptres> predicted(Dioptres implanted) {
        Map<FormulaName, Dioptres> predicted = new EnumMap<>(FormulaName.class);
        for (Observation each : predictions) {
            FormulaCodes.formula(each.getMethod())
                    .ifPresent(formula -> foretold(each, implanted).ifPresent(value -> predicted.put(formula, value)));
        }
        return predicted;
    }

    /** The row of the table for the power implanted; the value itself is for the power planned. */
    private Optional<Dioptres> foretold(Observation prediction, Dioptres implanted) {
        Optional<Dioptres> row = components(prediction, "refraction-with-power")
                .filter(each -> Optional.ofNullable(each.getExtensionByUrl(LABELLED))
                        .flatMap(labelled -> number(labelled.getValue()))
                        .map(Dioptres::of)
                        .filter(implanted::equals)
                        .isPresent())
                .flatMap(each -> number(each.getValue()).stream())
                .map(Dioptres::of)
                .findFirst();
        boolean asPlanned = new LensInEye(shelf, new ArrayList<>())
                .requests(operation)
                .filter(each -> each.getIntent() == RequestIntent.PLAN)
                .flatMap(each -> StoredPlan.labelled(each).stream())
                .anyMatch(implanted::equals);
        return row.or(() -> asPlanned ? number(prediction.getValue()).map(Dioptres::of) : Optional.empty());
    }

    private Optional<RiskAssessment> risk() {
        List<String> bookings = operation.getBasedOn().stream().map(Shelf::name).toList();
        return shelf.all(RiskAssessment.class)
                .filter(each -> Codes.has(each.getCode(), Systems.RISK_OUTCOME, "posterior-capsule-rupture"))
                .filter(each -> bookings.contains(Shelf.name(each.getBasedOn())))
                .findFirst();
    }

    /** FHIR's probability is a percentage. */
    private Optional<Probability> rupture() {
        return risk().map(each -> each.getPredictionFirstRep().getProbability())
                .filter(DecimalType.class::isInstance)
                .map(each -> Probability.of(((DecimalType) each).getValue().doubleValue() / 100));
    }

    private Optional<PureNumber> odds() {
        return risk().map(each -> PureNumber.of(each.getExtensionsByUrl(ODDS).stream()
                .map(factor -> factor.getExtensionByUrl("odds-ratio"))
                .map(Extension::getValue)
                .mapToDouble(ratio -> ((DecimalType) ratio).getValue().doubleValue())
                .reduce(1, (one, other) -> one * other)));
    }

    private Optional<Astigmatism> residual() {
        Optional<Observation> chosen = predictions.stream()
                .filter(each -> components(each, "chosen")
                        .anyMatch(part -> part.getValue() instanceof BooleanType yes && yes.booleanValue()))
                .findFirst();
        return chosen.flatMap(each -> part(each, "residual-cylinder").flatMap(cylinder -> part(each, "residual-axis")
                .map(axis -> new SphereCylinder(Dioptres.of(0), Dioptres.of(cylinder), Degrees.of(axis))
                        .matrix()
                        .astigmatism())));
    }

    private static Optional<Double> part(Observation prediction, String code) {
        return components(prediction, code)
                .flatMap(each -> number(each.getValue()).stream())
                .findFirst();
    }

    private static Stream<ObservationComponentComponent> components(Observation prediction, String code) {
        return prediction.getComponent().stream().filter(each -> Codes.has(each.getCode(), Systems.MEASUREMENT, code));
    }

    /** Only what Lensward wrote is read here, in the units it writes. */
    private static Optional<Double> number(@Nullable Type value) {
        return value instanceof Quantity given && given.hasValue()
                ? Optional.of(given.getValue().doubleValue())
                : Optional.empty();
    }
}
