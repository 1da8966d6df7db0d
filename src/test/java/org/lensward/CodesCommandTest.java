package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.record.Fhir;

/** The report on a record's codes as a person at a terminal sees it. */
class CodesCommandTest {

    private static final String HOSPITALS = "demo-data/three-hospitals/";
    private static final String SOUTH = HOSPITALS + "south/in.json";

    private final Path folder;

    CodesCommandTest(@TempDir Path folder) {
        this.folder = folder;
    }

    private static String line(Terminal seen, String... parts) {
        return seen.out()
                .lines()
                .filter(line -> Stream.of(parts).allMatch(line::contains))
                .findFirst()
                .orElseThrow(
                        () -> new AssertionError("No line with " + String.join(", ", parts) + " in\n" + seen.out()));
    }

    private Terminal through(String yaml) throws IOException {
        Path map = Files.writeString(folder.resolve("map.yaml"), yaml);
        return Terminal.run("codes", SOUTH, "--site-codes", map.toString());
    }

    @Test
    void standard_codes_and_units_are_mapped_with_their_counts() {
        Terminal seen = Terminal.run("codes", "demo-data/an-ordinary-eye/in.json");
        assertThat(seen.exit()).isZero();
        assertThat(line(seen, "measurement|axial-length "))
                .startsWith("mapped     eye")
                .endsWith("2  axial length");
        assertThat(line(seen, "atc|C02CA04")).contains("drug").endsWith("1  doxazosin");
        assertThat(line(seen, "unit of angle", " deg ")).endsWith("2  UCUM");
        assertThat(line(seen, "demo-hospital-number")).endsWith("1  counts, as all do");
        assertThat(seen.out()).contains("ambiguous: 0 (0 times); unmapped: 0 (0 times)");
    }

    @Test
    void what_is_not_understood_comes_first_and_fails() {
        Terminal seen = Terminal.run("codes", SOUTH);
        assertThat(seen.exit()).isEqualTo(3);
        assertThat(seen.out().lines().skip(1).findFirst().orElseThrow()).startsWith("unmapped   eye");
        assertThat(line(seen, "|BIOM")).startsWith("unmapped   eye").endsWith("2");
        assertThat(line(seen, "|RX-5521")).startsWith("unmapped        drug");
    }

    @Test
    void a_code_and_a_unit_mapped_twice_over_are_ambiguous() throws IOException {
        Terminal seen = through("""
                version: x
                codes:
                  - {code: "urn:oid:2.25.310447715|BIOM", means: "measurement|biometry-panel"}
                  - {code: "urn:oid:2.25.310447715|AL", means: "measurement|axial-length"}
                  - {code: "urn:oid:2.25.310447715|LT", means: "measurement|lens-thickness"}
                  - {code: "urn:oid:2.25.310447715|LT", means: "measurement|anterior-chamber-depth"}
                  - {code: "urn:oid:2.25.310447715|PUP", means: "measurement|dilated-pupil"}
                units:
                  - {kind: length, unit: "1/10 mm", ucum: mm, factor: 0.1}
                  - {kind: length, unit: "1/10 mm", ucum: mm, factor: 0.01}
                """);
        assertThat(seen.exit()).isEqualTo(3);
        assertThat(line(seen, "|LT"))
                .startsWith("ambiguous  eye")
                .endsWith("2  anterior chamber depth or lens thickness");
        assertThat(line(seen, "1/10 mm")).startsWith("ambiguous  eye");
        assertThat(line(seen, "|AL ")).startsWith("mapped     eye").endsWith("axial length (site's map)");
    }

    @Test
    void a_code_beside_one_that_is_understood_is_no_gap() throws IOException {
        String json = """
                {"resourceType": "Bundle", "type": "collection", "entry": [{"resource":
                  {"resourceType": "Observation", "id": "o", "status": "final",
                   "code": {"coding": [{"system": "http://loinc.org", "code": "64742-0"}, {"code": "AXL"}]},
                   "bodySite": {"text": "Aoife Example, right"},
                   "valueQuantity": {"value": 23.5, "unit": "furlong"}}}]}""";
        Terminal seen = Terminal.runWith(json, "codes", "-");
        assertThat(line(seen, "|AXL")).startsWith("mapped     eye").endsWith("(by the code beside it)");
        assertThat(line(seen, "furlong")).startsWith("unmapped   eye");
        assertThat(line(seen, "(words without a code)")).contains("body site");
        assertThat(seen.exit()).isEqualTo(3);
        assertThat(seen.out()).doesNotContain("Aoife", "23.5");
    }

    @Test
    void nothing_of_a_patient_is_printed() {
        for (String file : new String[] {SOUTH, HOSPITALS + "north/in.json", "demo-data/an-ordinary-eye/in.json"}) {
            Terminal seen = Terminal.run("codes", file);
            assertThat(seen.out() + seen.err())
                    .doesNotContain("Quillfeather", "Maren", "Tillwick", "Oriel", "1951", "1953")
                    .doesNotContain("N-40117", "900-114", "QX1077", "24.18", "Patient/");
        }
    }

    @Test
    void input_that_cannot_be_read_is_refused() {
        assertThat(Terminal.run("codes", "no-such-file.json").exit()).isEqualTo(2);
        assertThat(Terminal.run("codes").exit()).isEqualTo(2);
        assertThat(Terminal.run("codes", SOUTH, "--record", "http://localhost:1/fhir")
                        .exit())
                .isEqualTo(2);
    }

    /** More of a kind than one page holds: the server pages at its own limit, the command follows. */
    @Test
    void a_server_is_read_page_by_page() throws IOException {
        try (EmbeddedRecord record = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0))) {
            Bundle south = Fhir.r4().newJsonParser().parseResource(Bundle.class, Files.readString(Path.of(SOUTH)));
            Bundle many = south.copy();
            for (int index = 0; index < 600; index++) {
                Bundle.BundleEntryComponent entry = many.addEntry();
                Observation pulse = new Observation();
                pulse.setStatus(ObservationStatus.FINAL);
                pulse.getCode().addCoding().setSystem("http://loinc.org").setCode("8867-4");
                pulse.setId("pulse-" + index);
                entry.setResource(pulse);
                entry.getRequest().setMethod(Bundle.HTTPVerb.PUT).setUrl("Observation/pulse-" + index);
            }
            Fhir.r4()
                    .newRestfulGenericClient(record.baseUrl())
                    .transaction()
                    .withBundle(many)
                    .execute();
            Terminal seen = Terminal.run(
                    "codes", "--record", record.baseUrl(), "--site-codes", HOSPITALS + "south/site-codes.yaml");
            assertThat(seen.exit()).isZero();
            assertThat(line(seen, "8867-4"))
                    .startsWith("unmapped        observation")
                    .endsWith("600");
            assertThat(line(seen, "|AL ")).endsWith("2  axial length (site's map)");
        }
    }
}
