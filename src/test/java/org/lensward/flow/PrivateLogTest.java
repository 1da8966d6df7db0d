package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lensward.board.BoardConfiguration;
import org.slf4j.LoggerFactory;

/**
 * A whole theatre day with marks planted wherever a patient's data can stand: names, numbers, day of birth and free text of the record, of
 * messages, of files and of calls, sound and broken. None is in anything the process writes.
 */
class PrivateLogTest {

    private static final Duration LONG = Duration.ofSeconds(120);
    private static final String NAME = "Quillfeather";
    private static final String NUMBER = "ZQ7700431";
    private static final String BORN = "1951-07-19";
    private static final String FREE = "drinks with the magistrate";
    private static final List<String> MARKS = List.of(NAME, NUMBER, BORN, "19510719", FREE, "magistrate");

    @TempDir
    private Path folder;

    private final HttpClient http = HttpClient.newHttpClient();
    private int hl7;

    @Test
    void nothing_that_is_logged_or_printed_says_anything_of_a_patient() throws Exception {
        PrintStream out = System.out;
        PrintStream err = System.err;
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        ListAppender<ILoggingEvent> logged = new ListAppender<>();
        Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
        logged.start();
        try (RunningDay day = new RunningDay()) {
            PrintStream caught = new PrintStream(printed, true, StandardCharsets.UTF_8);
            System.setOut(caught);
            System.setErr(caught);
            plant(day);
            live(day, () -> root.addAppender(logged));
        } finally {
            root.detachAppender(logged);
            System.setOut(out);
            System.setErr(err);
        }
        String all = printed.toString(StandardCharsets.UTF_8);
        assertThat(all)
                .contains("ServiceRequest/booking-01 ", "Message refused", "A file refused")
                .doesNotContain(MARKS);
        assertThat(logged.list).isNotEmpty().allSatisfy(event -> assertThat(event.getFormattedMessage())
                .doesNotContain(MARKS));
        assertThat(logged.list)
                .filteredOn(event -> event.getFormattedMessage().startsWith("ServiceRequest/booking-01 "))
                .isNotEmpty()
                .allSatisfy(event ->
                        assertThat(event.getMDCPropertyMap()).containsEntry("booking", "ServiceRequest/booking-01"));
    }

    /** Starting sets up the log anew, so listening begins behind it and before any work. */
    private void live(RunningDay day, Runnable listen) throws Exception {
        try (ServerSocket free = new ServerSocket(0)) {
            hl7 = free.getLocalPort();
        }
        Path files = Files.createDirectory(folder.resolve("files"));
        Map<String, Object> settings = new HashMap<>(day.settings());
        settings.put("server.port", "0");
        settings.put("camel.main.auto-startup", "false");
        settings.put("lensward.access.open", "true");
        settings.put("lensward.hl7.port", hl7);
        settings.put("lensward.hl7.systems.HOSP", Ward.HOSPITAL);
        settings.put("lensward.files.folder", files.toString());
        settings.put("lensward.files.settled-after", "100ms");
        try (Adapter adapter = Adapter.serve(settings, BoardConfiguration.class)) {
            listen.run();
            adapter.work();
            send();
            drop(files);
            call(adapter.port());
            RunningDay.await("every booking has a plan", LONG, day::allPlanned);
            RunningDay.await(
                    "every file was read", LONG, () -> Files.exists(files.resolve(".error/" + NAME + ".json.error")));
            healthy(adapter.port());
        }
    }

    /** A name, a number, a day of birth and free text, on a sound booking and on one that cannot be read. */
    private static void plant(RunningDay day) {
        for (String id : List.of("patient-01", "patient-02")) {
            Patient patient =
                    day.client().read().resource(Patient.class).withId(id).execute();
            patient.getNameFirstRep().setFamily(NAME).addGiven(NAME);
            patient.addIdentifier().setSystem(Ward.HOSPITAL).setValue(NUMBER + id);
            patient.setBirthDate(java.sql.Date.valueOf(LocalDate.parse(BORN)));
            day.client().update().resource(patient).execute();
        }
        ServiceRequest booking = day.client()
                .read()
                .resource(ServiceRequest.class)
                .withId("booking-01")
                .execute();
        booking.addNote().setText(FREE);
        booking.addBodySite().setText(NAME);
        day.client().update().resource(booking).execute();
        Observation length = new Observation();
        length.setStatus(Observation.ObservationStatus.FINAL);
        length.getCode()
                .addCoding()
                .setSystem("https://lensward.org/fhir/CodeSystem/measurement")
                .setCode("axial-length");
        length.getCode().setText(FREE);
        length.getSubject().setReference("Patient/patient-02").setDisplay(NAME);
        length.getValueQuantity().setValue(23.5).setUnit(NAME).setCode(NUMBER).setSystem("http://unitsofmeasure.org");
        length.addNote().setText(FREE);
        day.client().create().resource(length).execute();
    }

    /** Messages: of a known patient, of an unknown one, broken, and no message at all. */
    private void send() throws IOException {
        try (MllpClient client = new MllpClient(hl7)) {
            for (String patient : List.of(NUMBER + "patient-01", NUMBER)) {
                client.ask(new String(Messages.length("c1", "o1", patient, "23.4"), StandardCharsets.UTF_8)
                        .replace("Tillwick^Ada", NAME + "^" + NAME + "||19510719")
                        .getBytes(StandardCharsets.UTF_8));
            }
            client.ask(Messages.bytes("MSH|^~\\&|" + NAME + "|" + NUMBER, "PID|1||" + NUMBER, "OBX|" + FREE));
            client.ask((NAME + " " + FREE).getBytes(StandardCharsets.UTF_8));
        }
    }

    private static void drop(Path files) throws IOException {
        Files.writeString(files.resolve(NAME + ".csv"), "result,patient\n" + NUMBER + "," + NAME + "," + BORN + "\n");
        Files.writeString(
                files.resolve(NAME + ".json"),
                "{\"resourceType\":\"Bundle\",\"type\":\"" + FREE
                        + "\",\"entry\":[{\"resource\":{\"resourceType\":\"Patient\"," + "\"birthDate\":\"" + BORN
                        + "T\",\"name\":[{\"family\":\"" + NAME + "\"}]}}]}");
    }

    private void call(int port) throws Exception {
        String body = "{\"surgeon\":\"" + NAME + "\",\"reason\":\"" + FREE + "\",\"born\":\"" + BORN + "\"}";
        for (String path : List.of(
                "/api/plans/booking-01/confirmation",
                "/api/plans/" + NUMBER,
                "/api/labels",
                "/api/checks/" + NAME + "/start")) {
            HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                    .header("Content-Type", "application/json")
                    .POST(BodyPublishers.ofString(body))
                    .build();
            assertThat(http.send(request, BodyHandlers.ofString()).statusCode()).isBetween(400, 599);
        }
    }

    private void healthy(int port) throws Exception {
        RunningDay.await("a look that counts", LONG, () -> get(port, "/actuator/health/readiness")
                .contains("\"UP\""));
        String figures = get(port, "/actuator/prometheus");
        assertThat(figures)
                .contains("lensward_plan_seconds_count{outcome=\"done\"}", "lensward_findings_total{code=\"")
                .contains("lensward_refused_total{code=\"", "way=\"hl7\"", "way=\"files\"")
                .containsPattern("lensward_look_age_seconds [0-9.]+")
                .doesNotContain(MARKS);
    }

    private String get(int port, String path) {
        try {
            HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                    .build();
            return http.send(request, BodyHandlers.ofString()).body();
        } catch (IOException | InterruptedException failed) {
            throw new AssertionError(failed);
        }
    }
}
