package org.lensward.board.gate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.nimbusds.jose.jwk.Curve;
import com.nimbusds.jose.jwk.JWK;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.gen.ECKeyGenerator;
import java.io.ByteArrayInputStream;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.board.BoardConfiguration;
import org.lensward.flow.Adapter;
import org.springframework.http.converter.json.Jackson2ObjectMapperBuilder;

/** The real adapter beside a record that is not there, as a caller who has not signed in sees it. */
class GateTest {

    private static final int BODY = 65_536;
    private static final HttpClient HTTP = HttpClient.newHttpClient();

    @TempDir
    private static Path folder;

    private static Adapter adapter;
    private static int management;
    private static JWK key;

    @BeforeAll
    static void start() throws Exception {
        key = new ECKeyGenerator(Curve.P_384).keyID("today").generate();
        Path keys = Files.createDirectory(folder.resolve("keys"));
        Files.writeString(keys.resolve("today.jwk"), key.toJSONString());
        int away;
        try (ServerSocket one = new ServerSocket(0);
                ServerSocket other = new ServerSocket(0)) {
            management = one.getLocalPort();
            away = other.getLocalPort();
        }
        adapter = Adapter.serve(
                Map.of(
                        "lensward.record.url",
                        "http://localhost:" + away + "/fhir",
                        "lensward.record-access.method",
                        "backend-service",
                        "lensward.record-access.service.client-id",
                        "lensward-adapter",
                        "lensward.record-access.service.keys",
                        keys.toString(),
                        "lensward.limits.body",
                        BODY + "B",
                        "management.server.port",
                        management,
                        "server.port",
                        "0",
                        "spring.artemis.embedded.data-directory",
                        folder.resolve("queue").toString()),
                BoardConfiguration.class);
    }

    @AfterAll
    static void stop() {
        adapter.close();
    }

    private static HttpResponse<String> send(int port, String path, String method, BodyPublisher body)
            throws Exception {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .header("Content-Type", "application/json")
                .method(method, body)
                .build();
        return HTTP.send(request, BodyHandlers.ofString());
    }

    private static HttpResponse<String> get(int port, String path) throws Exception {
        return send(port, path, "GET", BodyPublishers.noBody());
    }

    @Test
    void too_large_a_body_is_refused_whether_announced_or_in_chunks() throws Exception {
        byte[] large = new byte[BODY + 1];
        for (BodyPublisher body : List.of(
                BodyPublishers.ofByteArray(large),
                BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(large)))) {
            HttpResponse<String> answer = send(adapter.port(), "/api/stock/check", "POST", body);
            assertThat(answer.statusCode()).isEqualTo(413);
            assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
        }
    }

    @Test
    void what_fits_is_read_whole() throws Exception {
        HttpResponse<String> answer =
                send(adapter.port(), "/api/stock/check", "POST", BodyPublishers.ofByteArray(new byte[BODY]));
        assertThat(answer.statusCode()).isNotEqualTo(413);
    }

    @ParameterizedTest
    @ValueSource(strings = {"deep", "number", "text"})
    void a_bomb_of_json_is_refused_before_it_is_built(String kind) {
        Jackson2ObjectMapperBuilder builder = new Jackson2ObjectMapperBuilder();
        new GateConfiguration().boundedJson().customize(builder);
        ObjectMapper json = builder.build();
        String bomb =
                switch (kind) {
                    case "deep" -> "[".repeat(5_000) + "]".repeat(5_000);
                    case "number" -> "[" + "9".repeat(50_000) + "]";
                    default -> "[\"" + "x".repeat(200_000) + "\"]";
                };
        assertThatThrownBy(() -> json.readTree(bomb)).isInstanceOf(StreamConstraintsException.class);
    }

    @Test
    void the_public_half_of_the_key_is_there_for_everyone_and_the_private_one_for_nobody() throws Exception {
        HttpResponse<String> answer = get(adapter.port(), "/.well-known/jwks.json");
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(JWKSet.parse(answer.body()).getKeyByKeyId("today")).isEqualTo(key.toPublicJWK());
        assertThat(answer.body()).doesNotContain("\"d\"");
    }

    @Test
    void it_lives_but_is_not_ready_while_the_record_is_away_and_tells_strangers_no_more() throws Exception {
        HttpResponse<String> live = get(management, "/actuator/health/liveness");
        assertThat(live.statusCode()).isEqualTo(200);
        HttpResponse<String> ready = get(management, "/actuator/health/readiness");
        assertThat(ready.statusCode()).isEqualTo(503);
        assertThat(ready.body()).isEqualTo("{\"status\":\"OUT_OF_SERVICE\"}");
        assertThat(get(management, "/actuator/env").statusCode()).isEqualTo(404);
        assertThat(get(adapter.port(), "/actuator/health").statusCode()).isNotEqualTo(200);
    }

    @Test
    void figures_are_there_for_the_monitoring() throws Exception {
        String figures = get(management, "/actuator/prometheus").body();
        assertThat(figures)
                .contains(
                        "lensward_queue_depth{queue=\"lensward.bookings\"} 0.0",
                        "lensward_queue_oldest_seconds{queue=\"lensward.parked\"} 0.0",
                        "lensward_look_age_seconds NaN",
                        "lensward_certificate_record_days NaN",
                        "lensward_token_renewals_total 0.0",
                        "jvm_memory_used_bytes");
    }
}
