package org.lensward.record.site;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.DeviceDefinition.DeviceDefinitionPropertyComponent;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;
import org.lensward.record.UnitKind;
import org.lensward.record.Vocabulary;

/**
 * A number that Lensward reads, with the kind of unit it should come in.
 *
 * @param kind by what the number measures
 * @param quantity the number
 * @param field where it stands in its resource
 */
record UnitInUse(UnitKind kind, Quantity quantity, String field) {

    /** The unit as it was sent: its code, else its words, else nothing. */
    String unit() {
        if (quantity.hasCode()) {
            return quantity.getCode();
        }
        return quantity.hasUnit() ? quantity.getUnit() : "";
    }

    /** Every number of the resource whose concept is understood. */
    static List<UnitInUse> of(Resource resource) {
        List<UnitInUse> all = new ArrayList<>();
        if (resource instanceof Observation observation) {
            add(all, Vocabulary.kind(observation.getCode()), observation.getValue(), "value");
            List<ObservationComponentComponent> components = observation.getComponent();
            for (int index = 0; index < components.size(); index++) {
                CodeableConcept code = components.get(index).getCode();
                add(all, Vocabulary.kind(code), components.get(index).getValue(), "component[" + index + "].value");
            }
        } else if (resource instanceof DeviceDefinition lens) {
            lens.getProperty().forEach(each -> property(all, each));
        } else if (resource instanceof ServiceRequest booking) {
            booking.getExtensionsByUrl(Vocabulary.TARGET_EXTENSION)
                    .forEach(each -> add(
                            all, Optional.of(UnitKind.POWER), each.getValue(), "extension(target-refraction).value"));
        }
        return all;
    }

    private static void property(List<UnitInUse> all, DeviceDefinitionPropertyComponent property) {
        Optional<UnitKind> kind = Vocabulary.kind(property.getType());
        property.getValueQuantity().forEach(each -> add(all, kind, each, "property"));
    }

    private static void add(List<UnitInUse> all, Optional<UnitKind> kind, @Nullable Type value, String field) {
        if (value instanceof Quantity quantity
                && kind.filter(each -> each != UnitKind.NONE).isPresent()) {
            all.add(new UnitInUse(kind.get(), quantity, field));
        }
    }
}
