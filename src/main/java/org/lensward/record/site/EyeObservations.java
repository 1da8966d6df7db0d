package org.lensward.record.site;

import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.BodyStructure;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Type;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;
import org.lensward.record.UnitKind;
import org.lensward.record.Vocabulary;

/** Tells which Observations are, or for all we understand may be, measurements of an eye. */
final class EyeObservations {

    private static final String BODY_STRUCTURE = "http://hl7.org/fhir/StructureDefinition/bodySite";

    private final Shelf shelf;

    EyeObservations(Shelf shelf) {
        this.shelf = shelf;
    }

    /**
     * A measurement that is understood, one at an eye, one at a body site that only the hospital understands, or one in dioptres: what
     * cannot be told from an eye's is taken for one, lest a record of which nothing is understood pass for a good one.
     */
    boolean mayBe(Observation observation) {
        return !Vocabulary.measurements(observation.getCode()).isEmpty()
                || Vocabulary.isEye(shelf, List.of(observation.getBodySite()))
                || sites(observation.getBodySite()).anyMatch(EyeObservations::local)
                || values(observation).anyMatch(EyeObservations::dioptres);
    }

    private Stream<CodeableConcept> sites(CodeableConcept site) {
        Stream<BodyStructure> structures = site.getExtensionsByUrl(BODY_STRUCTURE).stream()
                .map(each -> each.getValue())
                .filter(Reference.class::isInstance)
                .flatMap(each -> shelf.find(BodyStructure.class, (Reference) each).stream());
        return Stream.concat(Stream.of(site), structures.map(BodyStructure::getLocation));
    }

    private static boolean local(CodeableConcept site) {
        return site.hasCoding() && site.getCoding().stream().noneMatch(each -> Systems.SNOMED.equals(each.getSystem()));
    }

    private static Stream<Type> values(Observation observation) {
        return Stream.concat(
                Stream.ofNullable(observation.getValue()),
                observation.getComponent().stream()
                        .map(ObservationComponentComponent::getValue)
                        .flatMap(Stream::ofNullable));
    }

    private static boolean dioptres(Type value) {
        return value instanceof Quantity quantity
                && UnitKind.POWER
                        .factor(quantity.hasCode() ? quantity.getCode() : quantity.hasUnit() ? quantity.getUnit() : "")
                        .isPresent();
    }
}
