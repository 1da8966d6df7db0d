package org.lensward.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.web.server.PortInUseException;

/** Expectations from HL7 FHIR R4 (4.0.1), RESTful API: create, update, conditional interactions, transaction. */
class EmbeddedRecordTest {

    private static final HttpClient HTTP = HttpClient.newHttpClient();

    @Test
    void keeps_what_the_interactions_of_fhir_r4_promise() throws Exception {
        try (EmbeddedRecord record = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0))) {
            String base = record.baseUrl();
            assertThat(put(base, "Patient/a-1", patient("a-1", true)).statusCode())
                    .isEqualTo(201);
            HttpResponse<String> stale = send(request(base + "/Patient/a-1")
                    .header("If-Match", "W/\"7\"")
                    .PUT(BodyPublishers.ofString(patient("a-1", false)))
                    .build());
            assertThat(stale.statusCode()).isIn(409, 412);
            assertThat(stale.body()).doesNotContain("\tat ").doesNotContain("Exception");
            HttpResponse<String> dangling = put(
                    base,
                    "ServiceRequest/s",
                    "{\"resourceType\":\"ServiceRequest\",\"id\":\"s\",\"status\":\"active\",\"intent\":\"order\","
                            + "\"subject\":{\"reference\":\"Patient/nobody\"}}");
            assertThat(dangling.statusCode()).isBetween(400, 422);
            assertThat(get(base + "/Patient?_id=a-1,other&_count=1000").body()).contains("\"total\":1");
            assertThat(get(base + "/metadata").body()).contains("\"4.0.1\"");
        }
    }

    @Test
    void two_records_live_side_by_side_and_leave_nothing_listening() throws Exception {
        EmbeddedRecord one = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0));
        String closed = one.baseUrl();
        try (EmbeddedRecord two = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0))) {
            put(closed, "Patient/only-in-one", patient("only-in-one", true));
            one.close();
            assertThatThrownBy(() -> EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(two.port())))
                    .isInstanceOf(PortInUseException.class);
            assertThat(get(two.baseUrl() + "/Patient/only-in-one").statusCode()).isEqualTo(404);
            assertThat(put(two.baseUrl(), "Patient/b-1", patient("b-1", true)).statusCode())
                    .isEqualTo(201);
        }
        assertThatThrownBy(() -> get(closed + "/metadata")).isInstanceOf(IOException.class);
    }

    @Test
    void finds_acknowledged_data_again_after_being_killed(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("record");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        RecordProcess.class.getName(),
                        file.toString(),
                        folder.resolve("address").toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("log").toFile())
                .start();
        try {
            String base = awaitAddress(process, folder.resolve("address"));
            for (int i = 0; i < 20; i++) {
                assertThat(put(base, "Patient/k-" + i, patient("k-" + i, true)).statusCode())
                        .isEqualTo(201);
            }
        } finally {
            process.destroyForcibly().waitFor(30, TimeUnit.SECONDS); // SIGKILL
        }
        try (EmbeddedRecord again = EmbeddedRecord.start(EmbeddedRecordSettings.inFile(0, file))) {
            assertThat(get(again.baseUrl() + "/Patient?_count=100").body()).contains("\"total\":20");
        }
    }

    private static String awaitAddress(Process process, Path address) throws Exception {
        long deadline = System.nanoTime() + TimeUnit.MINUTES.toNanos(3);
        while (!Files.exists(address)) {
            assertThat(process.isAlive()).isTrue();
            assertThat(System.nanoTime()).isLessThan(deadline);
            Thread.sleep(100);
        }
        return Files.readString(address);
    }

    private static String patient(String id, boolean active) {
        return "{\"resourceType\":\"Patient\",\"id\":\"" + id + "\",\"active\":" + active + "}";
    }

    private static HttpResponse<String> put(String base, String path, String body) throws Exception {
        return send(
                request(base + "/" + path).PUT(BodyPublishers.ofString(body)).build());
    }

    private static HttpResponse<String> get(String url) throws Exception {
        return send(request(url).GET().build());
    }

    private static HttpRequest.Builder request(String url) {
        return HttpRequest.newBuilder(URI.create(url))
                .header("Content-Type", "application/fhir+json")
                .header("Accept", "application/fhir+json");
    }

    private static HttpResponse<String> send(HttpRequest request) throws IOException, InterruptedException {
        return HTTP.send(request, BodyHandlers.ofString());
    }
}
