package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lensward.record.Fhir;

/** Files put into a real folder, through the real route into a real record. CSV: RFC 4180. NDJSON: FHIR Bulk Data Access. */
class WatchedFolderTest {

    private static final Duration SOON = Duration.ofSeconds(30);
    private static final String COLUMNS =
            "result,authority,patient,born,measured,sent,eye,code,value,unit,method,group,status\r\n";

    private static Path folder;
    private static Ward ward;
    private static Adapter adapter;

    @BeforeAll
    static void open() throws IOException {
        folder = Files.createTempDirectory("lensward-files");
        ward = new Ward()
                .with("lensward.files.folder", folder.toString())
                .with("lensward.files.settled-after", "300ms")
                .with("lensward.files.longest", 20_000);
        adapter = ward.adapter();
    }

    @AfterAll
    static void close() {
        adapter.close();
        ward.close();
    }

    /** Writes as the README asks: under a name nobody reads, then renamed. */
    private static void put(String name, String text) throws IOException {
        Path hidden = folder.resolve(".new-" + name);
        Files.writeString(hidden, text);
        Files.move(hidden, folder.resolve(name), StandardCopyOption.ATOMIC_MOVE);
    }

    private static void stored(String name) {
        RunningDay.await(
                name + " is stored",
                SOON,
                () -> Files.exists(folder.resolve(".done").resolve(name)));
    }

    private static OperationOutcome refused(String name) throws IOException {
        Path report = folder.resolve(".error").resolve(name + ".error");
        RunningDay.await(
                name + " is refused",
                SOON,
                () -> Files.exists(report)
                        && Files.exists(folder.resolve(".error").resolve(name)));
        return Fhir.r4().newJsonParser().parseResource(OperationOutcome.class, Files.readString(report));
    }

    private static String row(String result, String eye, String value, String state) {
        return result + ",HOSP,QX1077,1952-11-04,2026-11-25T09:25:00Z,2026-11-25T09:30:00Z," + eye + ",axial-length,"
                + value + ",mm,optical,," + state + "\r\n";
    }

    private static List<Observation> valued(String value) {
        return ward.all(Observation.class).stream()
                .filter(each ->
                        each.getValueQuantity().getValue().toPlainString().equals(value))
                .toList();
    }

    @Test
    void a_table_is_stored_and_the_same_again_doubles_nothing() throws IOException {
        String table = COLUMNS + row("r1", "right", "24.01", "") + row("r2", "left", "24.02", "final");
        put("day.csv", table);
        stored("day.csv");
        put("again.csv", table);
        stored("again.csv");
        assertThat(valued("24.01")).singleElement().satisfies(length -> {
            assertThat(length.getBodySite().getText()).isEqualTo("right eye");
            assertThat(length.getSubject().getReference()).isEqualTo("Patient/patient-01");
            assertThat(length.getMeta().getVersionId()).isEqualTo("1");
        });
        assertThat(valued("24.02")).hasSize(1);
    }

    @Test
    void a_table_with_one_bad_line_is_refused_whole_and_the_report_names_the_line() throws IOException {
        put("bad.csv", COLUMNS + row("r3", "right", "24.03", "") + row("r4", "both", "24.04", ""));
        OperationOutcome report = refused("bad.csv");
        assertThat(report.getIssueFirstRep().getDiagnostics())
                .contains("line 3", "eye is right or left", "put the whole file");
        assertThat(valued("24.03")).isEmpty();
    }

    @Test
    void a_bundle_of_another_server_is_stored_under_ids_of_our_own() throws IOException {
        Bundle bundle = new Bundle().setType(BundleType.COLLECTION);
        Patient patient = new Patient();
        patient.setId("77");
        patient.addIdentifier().setSystem(Ward.HOSPITAL).setValue("QX1090");
        bundle.addEntry().setResource(patient);
        bundle.addEntry().setResource(length("o1", "24.05").setSubject(new Reference("Patient/77")));
        put("bundle.json", Fhir.r4().newJsonParser().encodeResourceToString(bundle));
        stored("bundle.json");
        assertThat(valued("24.05")).singleElement().satisfies(length -> {
            assertThat(length.getSubject().getReference()).isEqualTo("Patient/patient-02");
            assertThat(length.getIdElement().getIdPart()).startsWith("file-");
        });
    }

    @Test
    void lines_of_a_bulk_export_are_stored_where_they_name_their_patient_by_identifier() throws IOException {
        Reference subject = new Reference()
                .setIdentifier(new Identifier().setSystem(Ward.HOSPITAL).setValue("QX1090"));
        put(
                "lines.ndjson",
                line(length("o2", "24.06").setSubject(subject))
                        + line(length("o3", "24.07").setSubject(subject)));
        stored("lines.ndjson");
        assertThat(valued("24.06")).hasSize(1);
        assertThat(valued("24.07")).hasSize(1);
        put("foreign.ndjson", line(length("o4", "24.08").setSubject(new Reference("Patient/patient-01"))));
        assertThat(refused("foreign.ndjson")
                        .getIssueFirstRep()
                        .getDetails()
                        .getCodingFirstRep()
                        .getCode())
                .isEqualTo("patient-system-unknown");
    }

    @Test
    void what_is_no_biometry_is_refused() throws IOException {
        put("notes.txt", "hello");
        put("large.csv", COLUMNS + row("r5", "right", "24.09", "").repeat(400));
        put("broken.json", "{\"resourceType\":\"Bundle\"");
        put(
                "other.json",
                "{\"resourceType\":\"Bundle\",\"type\":\"collection\",\"entry\":[{\"resource\":"
                        + "{\"resourceType\":\"Medication\",\"id\":\"m\"}}]}");
        for (String name : List.of("notes.txt", "large.csv", "broken.json", "other.json")) {
            assertThat(refused(name).getIssue()).as(name).hasSize(1);
        }
        assertThat(refused("large.csv").getIssueFirstRep().getDiagnostics()).contains("longer than allowed");
    }

    @Test
    void a_link_out_of_the_folder_is_not_followed(@TempDir Path elsewhere) throws IOException {
        Path secret = Files.writeString(elsewhere.resolve("secret.csv"), COLUMNS + row("r6", "right", "24.10", ""));
        Files.createSymbolicLink(folder.resolve("link.csv"), secret);
        RunningDay.await("the link is gone", SOON, () -> !Files.isSymbolicLink(folder.resolve("link.csv")));
        assertThat(valued("24.10")).isEmpty();
        assertThat(secret).exists();
    }

    @Test
    void a_file_that_is_still_being_written_is_not_read() throws IOException, InterruptedException {
        Path slow = folder.resolve("slow.csv");
        Files.writeString(slow, COLUMNS + row("r7", "right", "24.11", ""));
        for (int more = 0; more < 8; more++) {
            Thread.sleep(250);
            Files.writeString(slow, row("s" + more, "left", "25.1" + more, ""), StandardOpenOption.APPEND);
        }
        stored("slow.csv");
        assertThat(valued("24.11")).hasSize(1);
        assertThat(valued("25.17")).hasSize(1);
    }

    private static String line(Observation observation) {
        return Fhir.r4().newJsonParser().encodeResourceToString(observation) + "\n";
    }

    private static Observation length(String id, String millimetres) {
        Observation length = new Observation();
        length.setId(id);
        length.setStatus(ObservationStatus.FINAL);
        length.setCode(
                new CodeableConcept(new Coding().setSystem("http://loinc.org").setCode("66067-0")));
        length.setValue(new Quantity()
                .setValue(new BigDecimal(millimetres))
                .setUnit("mm")
                .setSystem("http://unitsofmeasure.org")
                .setCode("mm"));
        length.setEffective(new DateTimeType("2026-11-25T09:25:00Z"));
        return length;
    }
}
