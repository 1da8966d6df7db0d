package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import ca.uhn.fhir.validation.ValidationResult;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.gzip.GzipCompressorInputStream;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.utilities.npm.NpmPackage;
import org.hl7.fhir.utilities.npm.NpmPackageIndexBuilder;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The package as a stranger gets it, opened by HL7's own reader of packages. */
class FhirPackageTest {

    private static final Instant MODIFIED = Instant.parse("2026-11-25T00:00:00Z");
    private static final ObjectMapper JSON = new ObjectMapper();

    private static final Map<String, byte[]> ENTRIES = new TreeMap<>();
    private static NpmPackage opened;

    @BeforeAll
    static void open() throws IOException {
        byte[] archive = written();
        opened = NpmPackage.fromPackage(new ByteArrayInputStream(archive));
        try (TarArchiveInputStream tar =
                new TarArchiveInputStream(new GzipCompressorInputStream(new ByteArrayInputStream(archive)))) {
            for (TarArchiveEntry each = tar.getNextEntry(); each != null; each = tar.getNextEntry()) {
                assertThat(each.getLastModifiedTime().toInstant()).isEqualTo(MODIFIED);
                ENTRIES.put(each.getName(), tar.readAllBytes());
            }
        }
    }

    private static byte[] written() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        FhirPackage.write(out, MODIFIED);
        return out.toByteArray();
    }

    @Test
    void the_same_files_give_the_same_bytes() throws IOException {
        assertThat(written()).isEqualTo(written());
    }

    /** hl7.org/fhir/packages.html: the fields that a package of an implementation guide must have. */
    @Test
    void the_manifest_says_what_the_package_is_and_rests_on() {
        assertThat(opened.name()).isEqualTo("lensward.fhir");
        assertThat(opened.version()).isEqualTo("0.1.0");
        assertThat(opened.canonical()).isEqualTo("https://lensward.org/fhir");
        assertThat(opened.fhirVersionList()).isEqualTo("4.0.1");
        assertThat(opened.dependencies()).containsExactly("hl7.fhir.r4.core#4.0.1");
        assertThat(opened.license()).isEqualTo("Apache-2.0");
        assertThat(NpmPackage.isValidName(opened.name())).isTrue();
        assertThat(NpmPackage.isValidVersion(opened.version())).isTrue();
    }

    @Test
    void every_file_is_in_it_once_and_unchanged() throws IOException {
        assertHolds("package/", ProfileArtefacts.artefactFiles());
        assertHolds("package/example/", ProfileArtefacts.exampleFiles());
        assertThat(ENTRIES.get("package/package.json")).isEqualTo(Files.readAllBytes(ProfileArtefacts.MANIFEST));
        assertThat(ENTRIES)
                .hasSize(ProfileArtefacts.artefactFiles().size()
                        + ProfileArtefacts.exampleFiles().size()
                        + 3);
    }

    private static void assertHolds(String folder, List<Path> files) throws IOException {
        for (Path file : files) {
            Resource resource = ProfileArtefacts.parse(file, Resource.class);
            String name = resource.fhirType() + "-" + resource.getIdElement().getIdPart() + ".json";
            assertThat(ENTRIES.get(folder + name)).as(folder + name).isEqualTo(Files.readAllBytes(file));
        }
    }

    /** HL7's builder of indexes makes ours anew. */
    @ParameterizedTest
    @ValueSource(strings = {"package/", "package/example/"})
    void the_index_is_what_hl7_would_write(String folder) throws IOException {
        NpmPackageIndexBuilder builder = new NpmPackageIndexBuilder();
        builder.start(null);
        ENTRIES.forEach((name, content) -> {
            if (name.matches(folder + "[^./][^/]*")) {
                builder.seeFile(name.substring(folder.length()), content);
            }
        });

        assertThat(lines(Objects.requireNonNull(ENTRIES.get(folder + ".index.json"))))
                .isNotEmpty()
                .containsExactlyInAnyOrderElementsOf(lines(builder.build().getBytes(StandardCharsets.UTF_8)));
    }

    private static Set<JsonNode> lines(byte[] index) throws IOException {
        JsonNode tree = JSON.readTree(index);
        assertThat(tree.get("index-version").asInt()).isEqualTo(NpmPackageIndexBuilder.CURRENT_INDEX_VERSION);
        // HL7's builder takes the brace of a coded type for the type.
        tree.get("files")
                .valueStream()
                .filter(line -> line.path("type").asText().matches("[{\\[]"))
                .forEach(line -> ((ObjectNode) line).remove("type"));
        return tree.get("files").valueStream().collect(Collectors.toSet());
    }

    @Test
    void the_examples_are_valid_for_whoever_has_the_package_alone() throws IOException {
        FhirValidator validator =
                ProfileValidator.knowing(resources("package", "StructureDefinition", "CodeSystem", "ValueSet"));

        List<Resource> examples = resources("example");
        assertThat(examples).hasSameSizeAs(ProfileArtefacts.exampleFiles());
        assertThat(examples).allSatisfy(example -> {
            ValidationResult said = validator.validateWithResult(example);
            assertThat(said.getMessages())
                    .as(example.getId())
                    .noneMatch(message -> message.getSeverity().compareTo(ResultSeverityEnum.ERROR) >= 0);
        });
    }

    private static List<Resource> resources(String folder, String... types) throws IOException {
        List<Resource> resources = new ArrayList<>();
        for (String name : opened.listResourcesinFolder(folder, types)) {
            try (InputStream file = opened.load(folder, name)) {
                resources.add((Resource) ProfileArtefacts.FHIR.newJsonParser().parseResource(file));
            }
        }
        return resources;
    }
}
