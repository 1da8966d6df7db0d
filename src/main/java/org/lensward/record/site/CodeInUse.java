package org.lensward.record.site;

import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.AllergyIntolerance;
import org.hl7.fhir.r4.model.BodyStructure;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.Medication;
import org.hl7.fhir.r4.model.MedicationRequest;
import org.hl7.fhir.r4.model.MedicationStatement;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;
import org.lensward.record.Vocabulary.Place;

/**
 * A concept that Lensward reads, with what it is there to say.
 *
 * @param place what it is there to say
 * @param concept the concept; never empty
 */
record CodeInUse(Place place, CodeableConcept concept) {

    /** Every concept of the resource that Lensward reads. */
    static Stream<CodeInUse> of(Resource resource) {
        return all(resource).filter(use -> use.concept.hasCoding() || use.concept.hasText());
    }

    private static Stream<CodeInUse> all(Resource resource) {
        if (resource instanceof Observation observed) {
            return observation(observed);
        }
        if (resource instanceof Condition condition) {
            return with(condition.getBodySite(), new CodeInUse(Place.HISTORY, condition.getCode()));
        }
        if (resource instanceof Procedure procedure) {
            return with(procedure.getBodySite(), new CodeInUse(Place.HISTORY, procedure.getCode()));
        }
        if (resource instanceof ServiceRequest booking) {
            return Stream.concat(
                    with(booking.getBodySite(), new CodeInUse(Place.BOOKING, booking.getCode())),
                    Stream.of(new CodeInUse(Place.SURGEON, booking.getPerformerType())));
        }
        if (resource instanceof BodyStructure structure) {
            return with(structure.getLocationQualifier(), new CodeInUse(Place.BODY_SITE, structure.getLocation()));
        }
        return drugsAndLenses(resource);
    }

    private static Stream<CodeInUse> drugsAndLenses(Resource resource) {
        if (resource instanceof MedicationStatement statement) {
            return drug(statement.getMedication(), statement.getContained());
        }
        if (resource instanceof MedicationRequest request) {
            return drug(request.getMedication(), request.getContained());
        }
        if (resource instanceof Medication medication) {
            return Stream.of(new CodeInUse(Place.DRUG, medication.getCode()));
        }
        if (resource instanceof AllergyIntolerance allergy) {
            return Stream.concat(
                            Stream.of(allergy.getCode()),
                            allergy.getReaction().stream().map(each -> each.getSubstance()))
                    .map(each -> new CodeInUse(Place.ALLERGY, each));
        }
        return resource instanceof DeviceDefinition lens ? lens(lens) : Stream.empty();
    }

    private static Stream<CodeInUse> observation(Observation observed) {
        Stream<CodeableConcept> codes = Stream.concat(
                Stream.of(observed.getCode()),
                observed.getComponent().stream().map(ObservationComponentComponent::getCode));
        return Stream.concat(
                codes.map(each -> new CodeInUse(Place.OBSERVATION, each)),
                Stream.of(
                        new CodeInUse(Place.BODY_SITE, observed.getBodySite()),
                        new CodeInUse(Place.METHOD, observed.getMethod())));
    }

    private static Stream<CodeInUse> with(List<CodeableConcept> sites, CodeInUse code) {
        return Stream.concat(Stream.of(code), sites.stream().map(each -> new CodeInUse(Place.BODY_SITE, each)));
    }

    private static Stream<CodeInUse> drug(@Nullable Type medication, List<Resource> contained) {
        Stream<CodeInUse> inside = contained.stream().flatMap(CodeInUse::all);
        return medication instanceof CodeableConcept named
                ? Stream.concat(Stream.of(new CodeInUse(Place.DRUG, named)), inside)
                : inside;
    }

    /** A constant's value says by which biometry method it holds, any other property's what the lens is. */
    private static Stream<CodeInUse> lens(DeviceDefinition lens) {
        return Stream.concat(
                Stream.of(new CodeInUse(Place.LENS, lens.getType())),
                lens.getProperty().stream()
                        .flatMap(each -> Stream.concat(
                                Stream.of(new CodeInUse(Place.LENS, each.getType())),
                                each.getValueCode().stream()
                                        .filter(CodeableConcept::hasCoding)
                                        .map(value -> new CodeInUse(
                                                each.hasValueQuantity() ? Place.METHOD : Place.LENS, value)))));
    }
}
