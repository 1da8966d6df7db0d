package org.lensward.board.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.OperationDefinition;
import org.hl7.fhir.r4.model.OperationDefinition.OperationDefinitionParameterComponent;
import org.hl7.fhir.r4.model.OperationDefinition.OperationParameterUse;
import org.hl7.fhir.r4.model.Parameters;
import org.hl7.fhir.r4.model.Parameters.ParametersParameterComponent;
import org.lensward.board.ServedDay;

/** Parameters against the OperationDefinition that is published: names, types, how often. */
record OperationShape(OperationDefinition definition) {

    static OperationShape of(String name) {
        try {
            return new OperationShape(ServedDay.FHIR
                    .newJsonParser()
                    .parseResource(
                            OperationDefinition.class,
                            Files.readString(Path.of("fhir-profiles/operations", name + ".json"))));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    void assertRequest(Parameters given) {
        fits(given.getParameter(), parameters(OperationParameterUse.IN), "");
    }

    void assertAnswer(Parameters said) {
        fits(said.getParameter(), parameters(OperationParameterUse.OUT), "");
    }

    private List<OperationDefinitionParameterComponent> parameters(OperationParameterUse use) {
        return definition.getParameter().stream()
                .filter(each -> each.getUse() == use)
                .toList();
    }

    private static void fits(
            List<ParametersParameterComponent> given,
            List<OperationDefinitionParameterComponent> defined,
            String place) {
        Map<String, OperationDefinitionParameterComponent> known = defined.stream()
                .collect(Collectors.toMap(OperationDefinitionParameterComponent::getName, Function.identity()));
        for (ParametersParameterComponent each : given) {
            assertThat(known).as(place).containsKey(each.getName());
            OperationDefinitionParameterComponent one = Objects.requireNonNull(known.get(each.getName()));
            if (one.hasPart()) {
                fits(each.getPart(), one.getPart(), place + each.getName() + ".");
            } else {
                String type = each.hasResource()
                        ? each.getResource().fhirType()
                        : each.getValue().fhirType();
                assertThat(type).as(place + each.getName()).isEqualTo(one.getType());
            }
        }
        known.values().forEach(each -> assertThat(given.stream()
                        .filter(one -> one.getName().equals(each.getName()))
                        .count())
                .as(place + each.getName())
                .isBetween(
                        (long) each.getMin(),
                        each.getMax().equals("*") ? Long.MAX_VALUE : Long.parseLong(each.getMax())));
    }
}
