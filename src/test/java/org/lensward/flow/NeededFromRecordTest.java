package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestResourceComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestResourceSearchParamComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.TypeRestfulInteraction;
import org.hl7.fhir.r4.model.SearchParameter;
import org.junit.jupiter.api.Test;
import org.lensward.record.Fhir;

/** The statement of what a server must do, against the searches that stand in the program and HL7's search parameters of R4. */
class NeededFromRecordTest {

    private static final FhirContext FHIR = Fhir.r4();
    private static final Path PROGRAM = Path.of("src/main/java/org/lensward");
    private static final CapabilityStatement NEEDED = needed();

    /** A search in the program: a resource type, a question mark and what follows to the end of the literal. */
    private static final Pattern SEARCH = Pattern.compile("\"([A-Z][A-Za-z]+)\\?([^\"]*)");

    /** A further parameter in a literal of its own. */
    private static final Pattern FURTHER = Pattern.compile("\"&?([a-z_][A-Za-z-]*)(?::missing)?=");

    private static final Pattern NAMES_IN_LITERALS = Pattern.compile("[?&]([a-z_][A-Za-z-]*)=");

    private static final Pattern NAME = Pattern.compile("(?:^|&)([^=&]+)=");

    @Test
    void every_search_in_the_program_is_asked_of_the_record() throws IOException {
        Set<String> searched = new TreeSet<>();
        for (String source : sources().toList()) {
            Matcher search = SEARCH.matcher(source);
            while (search.find()) {
                Matcher name = NAME.matcher(search.group(2));
                while (name.find()) {
                    searched.add(search.group(1) + " " + name.group(1));
                }
            }
        }

        assertThat(searched)
                .hasSizeGreaterThan(20)
                .allSatisfy(each -> assertThat(isAsked(each)).as(each).isTrue());
    }

    @Test
    void every_parameter_in_a_literal_of_its_own_is_asked_of_some_resource() throws IOException {
        assertThat(further()).contains("_lastUpdated", "device-lot").allSatisfy(parameter -> assertThat(
                        NEEDED.getRestFirstRep().getResource())
                .anyMatch(resource -> isAsked(resource.getType() + " " + parameter)));
    }

    @Test
    void whatever_is_watched_can_be_asked_by_its_last_change() {
        assertThat(Watcher.WATCHED).allMatch(type -> isAsked(type + " _lastUpdated"));
    }

    @Test
    void nothing_is_asked_that_the_program_does_not_use() throws IOException {
        Set<String> used = further();
        sources()
                .forEach(
                        source -> NAMES_IN_LITERALS.matcher(source).results().forEach(each -> used.add(each.group(1))));

        assertThat(NEEDED.getRestFirstRep().getResource())
                .flatExtracting(CapabilityStatementRestResourceComponent::getSearchParam)
                .extracting(CapabilityStatementRestResourceSearchParamComponent::getName)
                .isSubsetOf(used);
    }

    /** The copy of R4's search parameters that HL7 publishes. */
    @Test
    void a_search_parameter_is_one_of_r4_or_published_by_us() throws IOException {
        Bundle standard = (Bundle) FHIR.newJsonParser().parseResource(r4("search-parameters.json"));

        for (CapabilityStatementRestResourceComponent resource :
                NEEDED.getRestFirstRep().getResource()) {
            assertThat(resource.getSearchParam()).allSatisfy(asked -> assertThat(Stream.concat(
                            standard.getEntry().stream().map(Bundle.BundleEntryComponent::getResource), ours()))
                    .as(resource.getType() + " " + asked.getName())
                    .map(SearchParameter.class::cast)
                    .filteredOn(each -> each.getUrl().equals(asked.getDefinition()))
                    .singleElement()
                    .satisfies(each -> {
                        assertThat(each.getCode()).isEqualTo(asked.getName());
                        assertThat(each.getType()).isEqualTo(asked.getType());
                        assertThat(each.getBase())
                                .extracting(base -> base.getValue())
                                .containsAnyOf(resource.getType(), "Resource");
                    }));
        }
    }

    @Test
    void what_is_searched_can_be_searched() {
        assertThat(NEEDED.getRestFirstRep().getResource())
                .filteredOn(CapabilityStatementRestResourceComponent::hasSearchParam)
                .allMatch(resource -> resource.getInteraction().stream()
                        .anyMatch(each -> each.getCode() == TypeRestfulInteraction.SEARCHTYPE));
    }

    private static Set<String> further() throws IOException {
        Set<String> found = new TreeSet<>();
        sources().forEach(source -> FURTHER.matcher(source).results().forEach(each -> found.add(each.group(1))));
        // The last two are of an address of the Bank page.
        found.removeAll(Set.of("_count", "power", "cylinder"));
        return found;
    }

    /** Whether the statement has that parameter; what R4 defines for every search or none is told in words. */
    private static boolean isAsked(String search) {
        String type = search.substring(0, search.indexOf(' '));
        String name = search.substring(type.length() + 1);
        return NEEDED.getRestFirstRep().getResource().stream()
                .filter(resource -> resource.getType().equals(type))
                .anyMatch(resource -> switch (name) {
                    case "_count" -> NEEDED.getRestFirstRep().getDocumentation().contains("_count");
                    case "_include" -> resource.hasSearchInclude();
                    default ->
                        name.startsWith("_has:")
                                ? resource.getDocumentation().contains(name)
                                : resource.getSearchParam().stream()
                                        .anyMatch(each -> each.getName().equals(name));
                });
    }

    private static Stream<SearchParameter> ours() {
        try (Stream<Path> files = Files.list(Path.of("fhir-profiles/search-parameters"))) {
            return files
                    .map(NeededFromRecordTest::read)
                    .map(text -> FHIR.newJsonParser().parseResource(SearchParameter.class, text))
                    .toList()
                    .stream();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static Stream<String> sources() throws IOException {
        try (Stream<Path> files = Files.walk(PROGRAM)) {
            return files
                    .filter(file -> file.toString().endsWith(".java"))
                    .map(NeededFromRecordTest::read)
                    .toList()
                    .stream();
        }
    }

    private static InputStream r4(String file) {
        return Objects.requireNonNull(
                NeededFromRecordTest.class.getResourceAsStream("/org/hl7/fhir/r4/model/sp/" + file), file);
    }

    private static CapabilityStatement needed() {
        return FHIR.newJsonParser()
                .parseResource(
                        CapabilityStatement.class,
                        read(Path.of("fhir-profiles/capability-statements/needed-from-record.json")));
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
