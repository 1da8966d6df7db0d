package org.lensward.record;

import org.hl7.fhir.r4.model.Observation;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.optics.toric.SphereCylinder;
import org.lensward.optics.toric.ToricChoice;
import org.lensward.plan.ToricPlan;

/** What a toric lens corrects, what it leaves, and what it leaves when it turns, as components of the chosen prediction. */
final class ToricComponents {

    private static final String ROTATION = Systems.extension("rotation");

    private ToricComponents() {}

    static void add(Observation observation, ToricPlan toric) {
        astigmatism(observation, "net-astigmatism", "Net corneal astigmatism", toric.net());
        refraction(observation, toric.choice().residual());
        for (ToricChoice.Rotation rotation : toric.choice().rotations()) {
            PredictedRefractions.component(
                            observation,
                            "residual-cylinder-rotated",
                            "Residual cylinder with the lens turned",
                            Quantities.dioptres(rotation.residual().cylinder()))
                    .addExtension(ROTATION, Quantities.degrees(rotation.by()));
        }
    }

    private static void astigmatism(Observation observation, String code, String display, Astigmatism astigmatism) {
        PredictedRefractions.component(observation, code, display, Quantities.dioptres(astigmatism.magnitude()));
        PredictedRefractions.component(
                observation,
                code + "-axis",
                display + ", steep meridian",
                Quantities.degrees(astigmatism.steepMeridian()));
    }

    private static void refraction(Observation observation, SphereCylinder residual) {
        PredictedRefractions.component(
                observation, "residual-sphere", "Residual sphere", Quantities.dioptres(residual.sphere()));
        PredictedRefractions.component(
                observation, "residual-cylinder", "Residual cylinder", Quantities.dioptres(residual.cylinder()));
        PredictedRefractions.component(
                observation, "residual-axis", "Residual axis", Quantities.degrees(residual.axis()));
    }
}
