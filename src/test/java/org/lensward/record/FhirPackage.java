package org.lensward.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveOutputStream;
import org.apache.commons.compress.compressors.gzip.GzipCompressorOutputStream;
import org.apache.commons.compress.compressors.gzip.GzipParameters;

/**
 * {@code fhir-profiles} as a FHIR package: one .tgz with {@code package/package.json}, every artefact flat beside it, the examples in
 * {@code package/example} and an {@code .index.json} in both (hl7.org/fhir/packages.html). The same files give the same bytes.
 */
public final class FhirPackage {

    private static final ObjectMapper JSON = new ObjectMapper();

    /** What the index tells of a file, where the file has it as a plain word. */
    private static final List<String> INDEXED =
            List.of("resourceType", "id", "url", "version", "kind", "type", "content", "valueSet", "derivation");

    private final Instant modified;
    private final Map<String, byte[]> entries = new TreeMap<>();

    private FhirPackage(Instant modified) {
        this.modified = modified;
    }

    /** Writes the package: arguments are the .tgz and the time that every file in it bears. */
    public static void main(String... arguments) throws IOException {
        Path archive = Path.of(arguments[0]);
        Files.createDirectories(archive.toAbsolutePath().getParent());
        try (OutputStream out = Files.newOutputStream(archive)) {
            write(out, Instant.parse(arguments[1]));
        }
    }

    /** Writes the package, each file in it modified at that time. */
    static void write(OutputStream out, Instant modified) throws IOException {
        FhirPackage made = new FhirPackage(modified);
        for (Path file : ProfileArtefacts.artefactFiles()) {
            made.add("package/", file);
        }
        for (Path file : ProfileArtefacts.exampleFiles()) {
            made.add("package/example/", file);
        }
        made.entries.put("package/.index.json", made.index("package/"));
        made.entries.put("package/example/.index.json", made.index("package/example/"));
        made.entries.put("package/package.json", Files.readAllBytes(ProfileArtefacts.MANIFEST));
        made.archive(out);
    }

    private void add(String folder, Path file) throws IOException {
        byte[] content = Files.readAllBytes(file);
        JsonNode resource = JSON.readTree(content);
        String name =
                resource.get("resourceType").asText() + "-" + resource.get("id").asText() + ".json";
        if (entries.put(folder + name, content) != null) {
            throw new IllegalArgumentException("Two files are the " + name + " of " + folder);
        }
    }

    private byte[] index(String folder) throws JsonProcessingException {
        ObjectNode index = JSON.createObjectNode().put("index-version", 2);
        for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
            String name = entry.getKey().substring(entry.getKey().lastIndexOf('/') + 1);
            if (entry.getKey().equals(folder + name)) {
                index.withArray("files").add(indexed(name, entry.getValue()));
            }
        }
        return JSON.writerWithDefaultPrettyPrinter()
                .writeValueAsString(index)
                .replace("\r\n", "\n")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static ObjectNode indexed(String name, byte[] content) {
        ObjectNode line = JSON.createObjectNode().put("filename", name);
        JsonNode resource = tree(content);
        INDEXED.stream()
                .filter(field -> resource.path(field).isValueNode())
                .forEach(field -> line.put(field, resource.get(field).asText()));
        return line;
    }

    private static JsonNode tree(byte[] content) {
        try {
            return JSON.readTree(content);
        } catch (IOException impossible) {
            throw new IllegalStateException("What was read a moment ago is no JSON", impossible);
        }
    }

    private void archive(OutputStream out) throws IOException {
        GzipParameters parameters = new GzipParameters();
        parameters.setModificationTime(modified.toEpochMilli());
        parameters.setOperatingSystem(255); // unknown: the bytes must not tell where they were made
        try (TarArchiveOutputStream tar =
                new TarArchiveOutputStream(new GzipCompressorOutputStream(out, parameters), "UTF-8")) {
            for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
                TarArchiveEntry header = new TarArchiveEntry(entry.getKey());
                header.setSize(entry.getValue().length);
                header.setModTime(modified.toEpochMilli());
                tar.putArchiveEntry(header);
                tar.write(entry.getValue());
                tar.closeArchiveEntry();
            }
        }
    }
}
