package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeSystem;
import org.hl7.fhir.r4.model.CodeSystem.ConceptDefinitionComponent;
import org.hl7.fhir.r4.model.SearchParameter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lensward.lens.stock.MovementKind;
import org.lensward.lens.stock.UnitState;

/** What is published of the lens bank against the program, and against HL7's R4 definitions. */
class BankArtefactsTest {

    static List<Path> searchParameters() {
        return ProfileArtefacts.files("search-parameters");
    }

    @Test
    void the_states_and_movements_published_are_those_of_the_program() {
        assertThat(codes("unit-state"))
                .containsExactlyElementsOf(
                        Stream.of(UnitState.values()).map(UnitState::code).toList());
        assertThat(codes("unit-movement"))
                .containsExactlyElementsOf(
                        Stream.of(MovementKind.values()).map(MovementKind::code).toList());
    }

    @Test
    void a_movement_is_displayed_as_the_program_writes_it() {
        assertThat(concepts("unit-movement"))
                .extracting(concept -> concept.getDisplay().toLowerCase(Locale.ROOT))
                .containsExactlyElementsOf(
                        Stream.of(MovementKind.values()).map(MovementKind::done).toList());
    }

    @ParameterizedTest
    @MethodSource("searchParameters")
    void a_search_parameter_is_valid_and_bears_the_name_of_its_file(Path file) {
        SearchParameter parameter = ProfileArtefacts.parse(file, SearchParameter.class);
        String name = file.getFileName().toString().replace(".json", "");

        assertThat(ProfileValidator.errors(parameter)).isEmpty();
        assertThat(parameter.getIdElement().getIdPart()).isEqualTo(name);
        assertThat(parameter.getCode()).isEqualTo(name);
        assertThat(parameter.getUrl()).isEqualTo(ProfileArtefacts.BASE + "SearchParameter/" + name);
    }

    private static List<String> codes(String system) {
        return concepts(system).stream()
                .map(ConceptDefinitionComponent::getCode)
                .toList();
    }

    private static List<ConceptDefinitionComponent> concepts(String system) {
        return ProfileArtefacts.codeSystems().stream()
                .filter(each -> each.getIdElement().getIdPart().equals(system))
                .map(CodeSystem::getConcept)
                .findFirst()
                .orElseThrow();
    }
}
