package org.lensward.record;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Type;
import org.lensward.eye.Biometry;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.plan.LensPlan;
import org.lensward.plan.PowerRow;
import org.lensward.plan.Prediction;
import org.lensward.plan.Uncertainty;

/** What each formula predicts of the primary lens, one preliminary Observation each. */
final class PredictedRefractions {

    private static final String LABELLED_POWER = Systems.extension("labelled-power");

    private PredictedRefractions() {}

    static List<Observation> of(PlanContext context, LensPlan lens) {
        return lens.predictions().stream()
                .map(prediction -> observation(context, lens, prediction))
                .toList();
    }

    private static Observation observation(PlanContext context, LensPlan lens, Prediction prediction) {
        Observation observation = new Observation();
        observation.setId(
                context.key().id("predicted-" + prediction.view().method().code()));
        observation.getMeta().addProfile(Systems.profile("predicted-refraction"));
        observation.addIdentifier(context.key().identifier());
        observation.addBasedOn(LensRequests.primary(context));
        observation.addPartOf(context.key().plan());
        observation.setStatus(ObservationStatus.PRELIMINARY);
        observation.setCode(Codes.concept(Systems.MEASUREMENT, "predicted-refraction", "Predicted refraction"));
        observation.setSubject(context.patient());
        observation.setBodySite(context.eye());
        observation.setMethod(FormulaCodes.concept(prediction.view().method()));
        observation.setValue(Quantities.dioptres(prediction.predicted()));
        observation.setDerivedFrom(PlanContext.references(measured(lens.biometry())));
        component(
                observation,
                "power-for-target",
                "Power for the target",
                Quantities.dioptres(prediction.powerForTarget()));
        component(
                observation,
                "lens-position",
                "Lens position",
                Quantities.millimetres(prediction.view().eye().lensPosition()));
        FormulaCodes.constants(prediction.view()).forEach(observation::addComponent);
        component(observation, "chosen", "Lens chosen by this formula", new BooleanType(prediction.chosen()));
        uncertainty(observation, prediction.uncertainty());
        prediction
                .thickEye()
                .ifPresent(thick -> component(
                        observation,
                        "thick-eye-refraction",
                        "By rays through a thick eye",
                        Quantities.dioptres(thick)));
        prediction.table().forEach(row -> row(observation, row));
        if (prediction.chosen()) {
            lens.toric().ifPresent(toric -> ToricComponents.add(observation, toric));
        }
        return observation;
    }

    private static void uncertainty(Observation observation, Uncertainty uncertainty) {
        component(
                observation, "standard-deviation", "Standard deviation", Quantities.dioptres(uncertainty.deviation()));
        component(
                observation,
                "within-half-dioptre",
                "Chance within 0.50 D",
                Quantities.percent(uncertainty.withinHalf()));
        component(
                observation, "within-one-dioptre", "Chance within 1.00 D", Quantities.percent(uncertainty.withinOne()));
        component(observation, "largest-contributor", "Improve first", new StringType(uncertainty.largest()));
    }

    private static void row(Observation observation, PowerRow row) {
        component(
                        observation,
                        "refraction-with-power",
                        "Refraction with this power",
                        Quantities.dioptres(row.predicted()))
                .addExtension(LABELLED_POWER, Quantities.dioptres(row.power()));
    }

    private static List<Evidence> measured(Biometry biometry) {
        return Stream.concat(
                        Stream.of(biometry.axialLength(), biometry.keratometry())
                                .map(Measured::evidence),
                        Stream.of(biometry.details().anteriorChamberDepth())
                                .flatMap(Optional::stream)
                                .map(Measured::evidence))
                .toList();
    }

    static ObservationComponentComponent component(Observation observation, String code, String display, Type value) {
        ObservationComponentComponent component =
                new ObservationComponentComponent(Codes.concept(Systems.MEASUREMENT, code, display));
        component.setValue(value);
        observation.addComponent(component);
        return component;
    }
}
