package org.lensward.flow.auth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestResourceComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.ResourceInteractionComponent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.record.Fhir;

/** Scopes as SMART App Launch 2.2.0 writes them (page "Scopes and Launch Context"; the reading of version 1 scopes is from there, too). */
class LeastScopesTest {

    /** What the program asks of the record is published; NeededFromRecordTest reads it from the program. */
    @Test
    void no_more_and_no_less_is_asked_for_than_the_published_need() throws Exception {
        CapabilityStatement need = Fhir.r4()
                .newJsonParser()
                .parseResource(
                        CapabilityStatement.class,
                        Files.readString(Path.of("fhir-profiles/capability-statements/needed-from-record.json")));
        List<String> scopes = need.getRestFirstRep().getResource().stream()
                .map(LeastScopesTest::scope)
                .sorted()
                .toList();
        assertThat(LeastScopes.ALL).containsExactlyElementsOf(scopes);
    }

    private static String scope(CapabilityStatementRestResourceComponent resource) {
        String letters = resource.getInteraction().stream()
                .map(ResourceInteractionComponent::getCode)
                .map(code -> switch (code) {
                    case CREATE -> "c";
                    case READ -> "r";
                    case UPDATE -> "cu";
                    case SEARCHTYPE -> "s";
                    default -> throw new AssertionError("No scope allows " + code);
                })
                .collect(Collectors.joining());
        TreeSet<Integer> places =
                letters.chars().mapToObj("cruds"::indexOf).collect(Collectors.toCollection(TreeSet::new));
        return "system/" + resource.getType() + "."
                + places.stream()
                        .map(place -> "cruds".substring(place, place + 1))
                        .collect(Collectors.joining());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            system/Task.cus    | system/Task.cruds                              |
            system/Task.cus    | system/*.*                                     |
            system/Task.cus    | system/Task.rs                                 | system/Task.cu
            system/Task.cus    | system/Task.read system/Task.write openid      |
            system/Task.cus    | system/Task.read                               | system/Task.cu
            system/Task.cus    | system/Task.c system/Task.u                    | system/Task.s
            system/Task.cus    | user/Task.cruds                                | system/Task.cus
            system/Task.s      | system/Task.s?code=x                           | system/Task.s
            system/Task.s?a=b  | system/Task.s?a=b                              |
            system/Task.s      | system/Tasks.s launch                          | system/Task.s
            """)
    void what_is_lacking_is_named(String asked, String granted, String lacking) {
        assertThat(LeastScopes.lacking(List.of(Scope.parse(asked)), granted))
                .extracting(Scope::toString)
                .isEqualTo(lacking == null ? List.of() : List.of(lacking));
    }

    @Test
    void a_setting_that_is_no_scope_is_refused() {
        for (String wrong : List.of("", "openid", "system/Task", "system/Task.", "system/Task.sr", "patient/Task.s")) {
            assertThatIllegalArgumentException().as(wrong).isThrownBy(() -> Scope.parse(wrong));
        }
    }
}
