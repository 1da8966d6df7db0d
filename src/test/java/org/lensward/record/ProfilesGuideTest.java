package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestResourceComponent;
import org.hl7.fhir.r4.model.ImplementationGuide;
import org.hl7.fhir.r4.model.ImplementationGuide.ImplementationGuideDefinitionResourceComponent;
import org.hl7.fhir.r4.model.OperationDefinition;
import org.hl7.fhir.r4.model.OperationDefinition.OperationDefinitionParameterComponent;
import org.hl7.fhir.r4.model.PrimitiveType;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What binds the artefacts together: the guide, the statements of what a server must do, the operations. */
class ProfilesGuideTest {

    static Stream<Path> bindings() {
        return Stream.of("capability-statements", "operations")
                .flatMap(folder -> ProfileArtefacts.files(folder).stream());
    }

    @Test
    void the_guide_lists_every_file_and_nothing_else() {
        List<String> listed = guide().getDefinition().getResource().stream()
                .map(each -> each.getReference().getReference())
                .toList();

        assertThat(listed)
                .containsExactlyInAnyOrderElementsOf(Stream.concat(
                                ProfileArtefacts.artefactFiles().stream(), ProfileArtefacts.exampleFiles().stream())
                        .filter(file -> !file.equals(Guide.FILE))
                        .map(ProfilesGuideTest::name)
                        .toList());
    }

    @Test
    void the_guide_says_which_profile_an_example_is_of() {
        Map<String, Resource> definitions = new HashMap<>();
        ProfileArtefacts.profiles().forEach(profile -> definitions.put(profile.getUrl(), profile));

        assertThat(guide().getDefinition().getResource())
                .filteredOn(ImplementationGuideDefinitionResourceComponent::hasExampleCanonicalType)
                .hasSizeGreaterThanOrEqualTo(ProfileArtefacts.examples().size())
                .allSatisfy(example -> assertThat(definitions)
                        .containsKey(example.getExampleCanonicalType().getValue()));
    }

    @Test
    void the_guide_is_valid_and_as_it_would_be_written_now() throws IOException {
        assertThat(ProfileValidator.errors(guide())).isEmpty();
        assertThat(Files.readString(Guide.FILE))
                .as("run org.lensward.record.PublishedFiles")
                .isEqualTo(PublishedFiles.guide());
    }

    @Test
    void every_extension_is_used_by_an_example() {
        String examples =
                ProfileArtefacts.examples().stream().map(ProfileArtefacts::json).collect(Collectors.joining());

        assertThat(ProfileArtefacts.extensions())
                .allMatch(extension -> examples.contains('"' + extension.getUrl() + '"'));
    }

    @ParameterizedTest
    @MethodSource("bindings")
    void a_statement_or_operation_is_valid_and_bears_the_name_of_its_file(Path file) {
        Resource artefact = ProfileArtefacts.parse(file, Resource.class);
        String name = file.getFileName().toString().replace(".json", "");

        assertThat(ProfileValidator.errors(artefact)).isEmpty();
        assertThat(artefact.getIdElement().getIdPart()).isEqualTo(name);
        assertThat(artefact.getNamedProperty("url").getValues().get(0).primitiveValue())
                .isEqualTo(ProfileArtefacts.BASE + artefact.fhirType() + "/" + name);
    }

    @Test
    void what_is_served_are_the_operations_that_are_defined() {
        assertThat(statement("served").getRestFirstRep().getOperation())
                .extracting(operation -> operation.getName() + " " + operation.getDefinition())
                .containsExactlyInAnyOrderElementsOf(operations()
                        .map(operation -> operation.getCode() + " " + operation.getUrl())
                        .toList());
    }

    @Test
    void an_operation_asks_for_value_sets_of_ours_that_exist() {
        List<String> sets =
                ProfileArtefacts.valueSets().stream().map(set -> set.getUrl()).toList();

        assertThat(operations().flatMap(operation -> parameters(operation.getParameter())))
                .filteredOn(OperationDefinitionParameterComponent::hasBinding)
                .isNotEmpty()
                .allSatisfy(parameter ->
                        assertThat(sets).contains(parameter.getBinding().getValueSet()));
    }

    @Test
    void every_profile_of_a_resource_is_asked_of_the_record_or_handed_in() {
        CapabilityStatementRestComponent rest = statement("needed-from-record").getRestFirstRep();

        assertThat(rest.getResource().stream()
                        .flatMap(each -> each.getSupportedProfile().stream())
                        .map(PrimitiveType::getValue))
                .containsExactlyInAnyOrderElementsOf(ProfileArtefacts.profiles().stream()
                        .filter(profile -> !profile.getAbstract())
                        .map(profile -> profile.getUrl())
                        .toList());
        assertThat(rest.getResource()).allSatisfy(ProfilesGuideTest::assertTypesFit);
    }

    private static void assertTypesFit(CapabilityStatementRestResourceComponent resource) {
        assertThat(resource.getSupportedProfile()).allSatisfy(url -> assertThat(
                        ProfileValidator.definition(url.getValue()).getType())
                .isEqualTo(resource.getType()));
    }

    private static Stream<OperationDefinitionParameterComponent> parameters(
            List<OperationDefinitionParameterComponent> some) {
        return some.stream().flatMap(each -> Stream.concat(Stream.of(each), parameters(each.getPart())));
    }

    private static Stream<OperationDefinition> operations() {
        return ProfileArtefacts.files("operations").stream()
                .map(file -> ProfileArtefacts.parse(file, OperationDefinition.class));
    }

    private static CapabilityStatement statement(String name) {
        return ProfileArtefacts.parse(
                ProfileArtefacts.ROOT.resolve("capability-statements").resolve(name + ".json"),
                CapabilityStatement.class);
    }

    private static ImplementationGuide guide() {
        return ProfileArtefacts.parse(Guide.FILE, ImplementationGuide.class);
    }

    private static String name(Path file) {
        Resource resource = ProfileArtefacts.parse(file, Resource.class);
        return resource.fhirType() + "/" + resource.getIdElement().getIdPart();
    }
}
