package org.lensward;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.FaultyRecord.Fault;
import org.lensward.record.Fhir;
import org.lensward.record.JsonEdit;

/** What the program says when it refuses: an example of each refusal, made by the real command. */
public final class Refusals {

    static final Path FOLDER = Path.of("fhir-profiles/examples/refusals");

    private static final Path BAD_INPUT = Path.of("src/test/resources/bad-input");
    private static final FhirContext FHIR = Fhir.r4();

    /** Input that cannot be read at all, by the name of its file in {@code bad-input}. */
    private static final List<String> UNREADABLE = List.of(
            "empty-bundle.json",
            "missing-patient.json",
            "no-booking.json",
            "not-a-bundle.json",
            "not-json.txt",
            "wrong-fhir-version.json");

    private Refusals() {}

    /** Writes the examples anew. */
    public static void write() throws IOException {
        Files.createDirectories(FOLDER);
        for (Map.Entry<String, String> each : all().entrySet()) {
            Files.writeString(FOLDER.resolve(each.getKey() + ".json"), each.getValue());
        }
    }

    /** Every example, by its name. */
    static Map<String, String> all() throws IOException {
        Map<String, String> all = new LinkedHashMap<>();
        for (String file : UNREADABLE) {
            String name = "unreadable-" + file.replaceAll("\\..*", "");
            all.put(name, example(name, unreadable(file)));
        }
        for (Map.Entry<String, FaultyRecord> each : withheld().entrySet()) {
            String name = "withheld-" + each.getKey();
            all.put(name, example(name, issue(each.getKey(), each.getValue())));
        }
        return all;
    }

    /** A record for each finding that withholds, by its code. */
    static Map<String, FaultyRecord> withheld() throws IOException {
        Map<String, FaultyRecord> records = new LinkedHashMap<>();
        for (String[] cells : lines()) {
            FaultyRecord wrong =
                    records.computeIfAbsent(cells[0], code -> new FaultyRecord(Path.of(cells[1]), new ArrayList<>()));
            if (!cells[2].isEmpty()) {
                wrong.faults().add(new Fault(cells[2], new JsonEdit(cells[3], cells[4])));
            }
        }
        return records;
    }

    private static List<String[]> lines() throws IOException {
        try (InputStream table = Objects.requireNonNull(Refusals.class.getResourceAsStream("refusals.psv"))) {
            return new String(table.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> (line + "||").split("\\|", 6))
                    .map(cells -> List.of(cells).stream().map(String::strip).toArray(String[]::new))
                    .toList();
        }
    }

    private static Resource unreadable(String file) {
        String said = Terminal.run("plan", BAD_INPUT.resolve(file).toString()).out();
        return FHIR.newJsonParser().parseResource(OperationOutcome.class, said);
    }

    private static Resource issue(String code, FaultyRecord wrong) throws IOException {
        Terminal seen = wrong.planned();
        return FHIR.newJsonParser().parseResource(Bundle.class, seen.out()).getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .filter(DetectedIssue.class::isInstance)
                .map(DetectedIssue.class::cast)
                .filter(each -> each.getCode().getCodingFirstRep().getCode().equals(code))
                .findFirst()
                .orElseThrow(() -> new AssertionError(code + " was not found, but: " + seen.err()));
    }

    private static String example(String name, Resource resource) {
        resource.setId(name);
        return FHIR.newJsonParser().setPrettyPrint(true).encodeResourceToString(resource) + "\n";
    }
}
