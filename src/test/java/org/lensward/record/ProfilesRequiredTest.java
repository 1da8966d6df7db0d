package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.ElementDefinition;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Takes each element that a profile requires out of the profile's examples: what remains is refused. */
class ProfilesRequiredTest {

    private static final ObjectMapper JSON = new ObjectMapper();

    /** Text is all that this code has: without it the code is not there, which is allowed. */
    private static final String ABSENT_WITHOUT = "DetectedIssue.evidence.code.text";

    /** A requirement of a profile by the id of its element, such as {@code Task.input:eye.value[x]}. */
    record Required(String profile, List<ElementDefinition> elements, String id) {
        @Override
        public String toString() {
            return profile + " " + id;
        }
    }

    static Stream<Required> required() {
        return ProfileArtefacts.profiles().stream()
                .filter(profile -> !profile.getAbstract())
                .flatMap(ProfilesRequiredTest::required);
    }

    private static Stream<Required> required(StructureDefinition profile) {
        List<ElementDefinition> elements =
                new ArrayList<>(profile.getDifferential().getElement());
        if (profile.getBaseDefinition().startsWith(ProfileArtefacts.BASE)) {
            elements.addAll(ProfileValidator.definition(profile.getBaseDefinition())
                    .getDifferential()
                    .getElement());
        }
        return elements.stream()
                .filter(element -> element.getMin() > 0 && !element.getId().equals(ABSENT_WITHOUT))
                .map(element -> new Required(profile.getUrl(), elements, element.getId()));
    }

    @ParameterizedTest
    @MethodSource("required")
    void what_lacks_a_required_element_is_refused(Required required) {
        List<JsonNode> lacking = ProfileArtefacts.examples().stream()
                .filter(example -> ProfileArtefacts.declared(example).equals(required.profile()))
                .flatMap(example -> lacking(example, required))
                .toList();

        assertThat(lacking).as("examples that have it").isNotEmpty();
        assertThat(lacking).allSatisfy(broken -> assertThat(ProfileValidator.errors(
                        ProfileArtefacts.FHIR.newJsonParser().parseResource(broken.toString())))
                .isNotEmpty());
    }

    private static Stream<JsonNode> lacking(Resource example, Required required) {
        JsonNode whole = tree(example);
        JsonNode rest = whole.deepCopy();
        List<String> steps = List.of(required.id().split("\\."));
        take(rest, steps.subList(1, steps.size()), required);
        return Stream.of(rest).filter(broken -> !broken.equals(whole));
    }

    private static void take(JsonNode node, List<String> steps, Required required) {
        String marker = marker(steps.get(0), required);
        for (String field : fields(node, steps.get(0).replaceAll(":.*", ""))) {
            JsonNode child = node.get(field);
            if (steps.size() > 1) {
                each(child)
                        .filter(one -> one.toString().contains(marker))
                        .forEach(one -> take(one, steps.subList(1, steps.size()), required));
            } else if (marker.isEmpty()) {
                ((ObjectNode) node).remove(field);
            } else {
                remove(child.iterator(), marker);
            }
        }
    }

    private static Stream<JsonNode> each(JsonNode child) {
        return child.isArray() ? child.valueStream() : Stream.of(child);
    }

    private static void remove(Iterator<JsonNode> all, String marker) {
        while (all.hasNext()) {
            if (all.next().toString().contains(marker)) {
                all.remove();
            }
        }
    }

    /** The fields of an element name; a choice such as {@code value[x]} has one for each type. */
    private static List<String> fields(JsonNode node, String name) {
        String pattern = name.replace("[x]", "[A-Z].*");
        return node.properties().stream()
                .map(Map.Entry::getKey)
                .filter(field -> field.matches(pattern))
                .toList();
    }

    /** Text by which the members of a slice are known: the extension's address or the pattern's code; empty for no slice. */
    private static String marker(String step, Required required) {
        if (!step.contains(":")) {
            return "";
        }
        for (ElementDefinition element : required.elements()) {
            if (element.getId().endsWith("." + step) && step.startsWith("extension:")) {
                return element.getType().get(0).getProfile().get(0).getValue();
            }
            if (element.getId().matches(".*\\." + step + "\\.(code|type)")) {
                return "\"code\":\"" + code(element) + "\"";
            }
        }
        throw new AssertionError("No discriminator for " + step);
    }

    private static String code(ElementDefinition element) {
        return ((CodeableConcept) element.getPattern()).getCodingFirstRep().getCode();
    }

    private static JsonNode tree(Resource example) {
        try {
            return JSON.readTree(ProfileArtefacts.json(example));
        } catch (JsonProcessingException impossible) {
            throw new AssertionError("HAPI wrote no JSON", impossible);
        }
    }
}
