package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.lensward.record.Fhir;
import org.lensward.record.ProfileValidator;

/** Every folder of the demo is planned by the real command; what comes out is what the folder says, and valid. */
class DemoFoldersTest {

    private static final Path FOLDERS = Path.of("demo-data");
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final FhirContext FHIR = Fhir.r4();

    /** What each story is there to show. */
    private static final Map<String, String> INTENDED = new TreeMap<>(Map.ofEntries(
            Map.entry("a-cornea-after-laser", "withheld"),
            Map.entry("a-dense-white-lens-measured-by-ultrasound", "provisional"),
            Map.entry("a-long-eye", "provisional"),
            Map.entry("a-measurement-without-its-side", "withheld"),
            Map.entry("a-short-eye", "provisional"),
            Map.entry("an-ordinary-eye", "ready"),
            Map.entry("astigmatism-worth-a-toric-lens", "ready"),
            Map.entry("biometry-too-old", "withheld"),
            Map.entry("silicone-oil", "withheld"),
            Map.entry("the-first-eye-surprised", "provisional"),
            Map.entry("two-statements-of-the-eye-disagree", "withheld"),
            Map.entry("weak-zonules", "ready")));

    private static List<Path> folders() throws IOException {
        try (Stream<Path> inside = Files.list(FOLDERS)) {
            return inside.filter(Files::isDirectory)
                    .filter(folder -> !folder.endsWith("three-hospitals")) // one eye three ways: ThreeHospitalsTest
                    .filter(folder ->
                            !folder.endsWith("outcomes-of-a-year")) // eyes looked back on: OutcomesCommandTest
                    .sorted()
                    .toList();
        }
    }

    @Test
    void every_story_has_a_folder() throws IOException {
        assertThat(folders())
                .extracting(folder -> folder.getFileName().toString())
                .containsExactlyElementsOf(INTENDED.keySet());
    }

    @Test
    void the_lens_catalogue_is_the_same_in_every_folder() throws IOException {
        assertThat(folders())
                .extracting(DemoFoldersTest::catalogue)
                .containsOnly(catalogue(folders().get(0)));
    }

    private static List<String> catalogue(Path folder) {
        return bundle(folder.resolve("in.json")).getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .filter(resource -> resource.fhirType().equals("DeviceDefinition"))
                .map(FHIR.newJsonParser()::encodeResourceToString)
                .sorted()
                .toList();
    }

    @TestFactory
    Stream<DynamicTest> each_is_planned_as_it_says() throws IOException {
        return folders().stream()
                .map(folder -> DynamicTest.dynamicTest(folder.getFileName() + "", () -> planned(folder)));
    }

    private static void planned(Path folder) throws IOException {
        Terminal seen = Terminal.run("plan", folder.resolve("in.json").toString());
        String state = INTENDED.getOrDefault(folder.getFileName().toString(), "missing");
        assertThat(seen.exit()).isEqualTo(state.equals("withheld") ? 3 : 0);
        assertThat(seen.err()).contains(": " + state);
        assertThat(untimed(seen.out())).isEqualTo(untimed(Files.readString(folder.resolve("out.json"))));
        Bundle written = FHIR.newJsonParser().parseResource(Bundle.class, seen.out());
        written.getEntry().forEach(entry -> assertThat(ProfileValidator.errors(entry.getResource()))
                .as(entry.getRequest().getUrl())
                .isEmpty());
        boolean proposes = written.getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .anyMatch(resource -> resource instanceof DeviceRequest || resource instanceof Task);
        assertThat(proposes).isEqualTo(!state.equals("withheld"));
    }

    /** Only the time of writing may differ between two runs. */
    private static JsonNode untimed(String json) throws IOException {
        JsonNode tree = JSON.readTree(json);
        tree.findParents("recorded").forEach(trail -> ((ObjectNode) trail).put("recorded", "then"));
        return tree;
    }

    private static Bundle bundle(Path file) {
        try {
            return FHIR.newJsonParser().parseResource(Bundle.class, Files.readString(file));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
