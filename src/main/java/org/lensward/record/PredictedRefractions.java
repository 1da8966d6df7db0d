package org.lensward.record;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Type;
import org.lensward.eye.Biometry;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.plan.LensPlan;
import org.lensward.plan.Prediction;

/** What each formula predicts of the primary lens, one preliminary Observation each. */
final class PredictedRefractions {

    private PredictedRefractions() {}

    static List<Observation> of(PlanContext context, LensPlan lens) {
        return lens.predictions().stream()
                .map(prediction -> observation(context, lens, prediction))
                .toList();
    }

    private static Observation observation(PlanContext context, LensPlan lens, Prediction prediction) {
        Observation observation = new Observation();
        observation.setId(context.key()
                .id("predicted-" + FormulaCodes.slug(prediction.view().formula())));
        observation.getMeta().addProfile(Systems.profile("predicted-refraction"));
        observation.addIdentifier(context.key().identifier());
        observation.addBasedOn(LensRequests.primary(context));
        observation.addPartOf(context.key().plan());
        observation.setStatus(ObservationStatus.PRELIMINARY);
        observation.setCode(Codes.concept(Systems.MEASUREMENT, "predicted-refraction", "Predicted refraction"));
        observation.setSubject(context.patient());
        observation.setBodySite(context.eye());
        observation.setMethod(FormulaCodes.concept(prediction.view().formula()));
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
        return observation;
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

    private static void component(Observation observation, String code, String display, Type value) {
        observation.addComponent(
                new ObservationComponentComponent(Codes.concept(Systems.MEASUREMENT, code, display)).setValue(value));
    }
}
