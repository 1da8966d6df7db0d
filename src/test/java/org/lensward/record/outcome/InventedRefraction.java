package org.lensward.record.outcome;

import static org.lensward.record.outcome.JsonParts.OURS;
import static org.lensward.record.outcome.JsonParts.SNOMED;
import static org.lensward.record.outcome.JsonParts.component;
import static org.lensward.record.outcome.JsonParts.components;
import static org.lensward.record.outcome.JsonParts.concept;
import static org.lensward.record.outcome.JsonParts.measured;
import static org.lensward.record.outcome.JsonParts.quantity;
import static org.lensward.record.outcome.JsonParts.reference;
import static org.lensward.record.outcome.JsonParts.side;

import java.util.stream.Stream;
import org.lensward.eye.Laterality;

/** How an invented eye was refracted, with one thing wrong where that is wanted. */
final class InventedRefraction {

    private static final String EXTENSION = "https://lensward.org/fhir/StructureDefinition/";

    private final InventedEye eye;
    private final Fault fault;

    InventedRefraction(InventedEye eye, Fault fault) {
        this.eye = eye;
        this.fault = fault;
    }

    /** Its Observation, written by those lines. */
    String line(InventedLines lines) {
        int after =
                switch (fault) {
                    case REFRACTED_BEFORE_SURGERY -> -14;
                    case REFRACTED_TOO_EARLY -> 2;
                    case REFRACTED_TOO_LATE -> 400;
                    default -> 28 + eye.number % 14;
                };
        Laterality of = fault == Fault.REFRACTION_OF_THE_OTHER_EYE ? eye.side.fellow() : eye.side;
        String way = fault == Fault.OBJECTIVE_ONLY ? "objective" : "subjective";
        String method = fault == Fault.REFRACTION_WITHOUT_METHOD
                ? ""
                : ",\"method\":" + concept(OURS + "refraction-method", way);
        String other = fault == Fault.REFRACTION_NAMES_ANOTHER_OPERATION
                ? ",\"partOf\":[" + reference("Procedure/operation-" + eye.key()) + "]"
                : "";
        String line = lines.observation(
                "refraction-" + eye.key(),
                "1",
                measured("refraction"),
                eye.day.plusDays(after).toString(),
                fault == Fault.REFRACTION_NAMES_ANOTHER_OPERATION ? eye.side.fellow() : of,
                method + other + written());
        return switch (fault) {
            case REFRACTION_WITHOUT_EYE -> line.replace(",\"bodySite\":" + side(eye.side), "");
            case REFRACTION_OF_BOTH_EYES -> line.replace(side(eye.side), concept(SNOMED, "40638003"));
            default -> line;
        };
    }

    private String written() {
        double sphere = eye.plusForm ? eye.sphere - eye.cylinder : eye.sphere;
        double cylinder = eye.plusForm ? eye.cylinder : -eye.cylinder;
        double strong = fault == Fault.VERTEX_MISSING ? sphere - 5.5 : sphere;
        String unit = fault == Fault.REFRACTION_IN_CENTIMETRES ? "cm" : "[diop]";
        int axis = eye.plusForm ? (eye.cylinderAxis + 90) % 180 : eye.cylinderAxis;
        return components(Stream.of(
                        component(measured("refraction-sphere"), quantity(strong, unit)),
                        fault == Fault.CYLINDER_MISSING ? "" : cylinder(cylinder),
                        component(measured("refraction-axis"), quantity(axis, "deg")),
                        fault == Fault.VERTEX_MISSING ? "" : component(measured("vertex-distance"), quantity(12, "mm")),
                        fault == Fault.ACUITY_MISSING
                                ? ""
                                : component(
                                        measured("corrected-acuity"),
                                        quantity(fault == Fault.POOR_ACUITY ? 0.8 : 0.04, "{logMAR}")))
                .filter(each -> !each.isEmpty())
                .toArray(String[]::new));
    }

    private String cylinder(double signed) {
        String value = fault == Fault.CYLINDER_UNSIGNED
                ? quantity(Math.abs(signed) + 0.25, "[diop]")
                        .replace(
                                "{\"value\"",
                                "{\"extension\":[{\"url\":\"" + EXTENSION
                                        + "cylinder-form\",\"valueCode\":\"not-told\"}],\"value\"")
                : quantity(signed, "[diop]");
        return component(measured("refraction-cylinder"), value);
    }
}
