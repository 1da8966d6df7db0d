package org.lensward.record;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.CodeSystem;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.hl7.fhir.r4.model.ValueSet;

/** What {@code fhir-profiles} holds, parsed anew at each call so that a test may break its copy. */
final class ProfileArtefacts {

    static final FhirContext FHIR = FhirContext.forR4();

    static {
        // HAPI's parser drops /_history/n from references unless told not to; the trail lives by it.
        FHIR.getParserOptions().setStripVersionsFromReferences(false);
    }

    static final String BASE = "https://lensward.org/fhir/";

    static final Path ROOT = Path.of("fhir-profiles");

    /** The package's manifest; everything else of the folder is an artefact, an example or prose. */
    static final Path MANIFEST = ROOT.resolve("package.json");

    private ProfileArtefacts() {}

    static List<StructureDefinition> profiles() {
        return of("profiles", StructureDefinition.class);
    }

    static List<StructureDefinition> extensions() {
        return of("extensions", StructureDefinition.class);
    }

    static List<CodeSystem> codeSystems() {
        return of("terminology/code-systems", CodeSystem.class);
    }

    static List<ValueSet> valueSets() {
        return of("terminology/value-sets", ValueSet.class);
    }

    static List<Resource> examples() {
        return of("examples", Resource.class);
    }

    static Resource example(String name) {
        return parse(ROOT.resolve("examples").resolve(name + ".json"), Resource.class);
    }

    /** The address of a profile or extension of ours. */
    static String url(String name) {
        return BASE + "StructureDefinition/" + name;
    }

    /** The address of the profile that a resource declares. */
    static String declared(Resource resource) {
        return resource.getMeta().getProfile().get(0).getValue();
    }

    static List<Path> files(String folder) {
        try (Stream<Path> paths = Files.list(ROOT.resolve(folder))) {
            return paths.filter(Files::isRegularFile).sorted().toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Every file of the folder, however deep, that is an artefact: JSON, and neither an example nor the manifest. */
    static List<Path> artefactFiles() {
        return json(ROOT)
                .filter(path -> !path.startsWith(ROOT.resolve("examples")))
                .filter(path -> !path.equals(MANIFEST))
                .toList();
    }

    /** Every example, those of the refusals among them. */
    static List<Path> exampleFiles() {
        return json(ROOT.resolve("examples")).toList();
    }

    private static Stream<Path> json(Path folder) {
        try (Stream<Path> paths = Files.walk(folder)) {
            return paths.filter(path -> path.toString().endsWith(".json")).sorted().toList().stream();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static <T extends Resource> List<T> of(String folder, Class<T> type) {
        return files(folder).stream().map(path -> parse(path, type)).toList();
    }

    static String json(IBaseResource resource) {
        return FHIR.newJsonParser().encodeResourceToString(resource);
    }

    /** The lines of a test table beside this class, without its comments. */
    static Stream<String> lines(String table) {
        try (InputStream stream = Objects.requireNonNull(ProfileArtefacts.class.getResourceAsStream(table), table)) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** A file of prose. */
    static String text(String name) {
        try {
            return Files.readString(ROOT.resolve(name));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    static <T extends Resource> T parse(Path path, Class<T> type) {
        try {
            return type.cast(FHIR.newJsonParser().parseResource(Files.readString(path)));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
