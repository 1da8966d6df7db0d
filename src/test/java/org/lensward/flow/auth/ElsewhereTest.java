package org.lensward.flow.auth;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.any;
import static com.github.tomakehurst.wiremock.client.WireMock.anyUrl;
import static com.github.tomakehurst.wiremock.client.WireMock.equalTo;
import static com.github.tomakehurst.wiremock.client.WireMock.get;
import static com.github.tomakehurst.wiremock.client.WireMock.okJson;
import static com.github.tomakehurst.wiremock.client.WireMock.post;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.github.tomakehurst.wiremock.WireMockServer;
import com.github.tomakehurst.wiremock.core.WireMockConfiguration;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.flow.RecordClient;
import org.lensward.flow.RecordRefusal;

/** Credentials go to the record and to nobody else. */
class ElsewhereTest {

    private final TokenServer record = new TokenServer();
    private final WireMockServer stranger =
            new WireMockServer(WireMockConfiguration.wireMockConfig().dynamicPort());
    private RecordClient client;

    @BeforeEach
    void start() {
        stranger.start();
        stranger.stubFor(
                any(anyUrl()).willReturn(okJson("{\"resourceType\":\"Bundle\",\"type\":\"searchset\",\"total\":1}")));
        client = record.client(Credentials.basic(new AccessSettings.Basic("adapter", Secret.of("open sesame"))));
    }

    @AfterEach
    void stop() {
        record.close();
        stranger.stop();
    }

    @Test
    void name_and_password_are_shown_to_the_record() {
        // RFC 7617: base64 of "adapter:open sesame", by coreutils' base64
        record.opensTo("Basic YWRhcHRlcjpvcGVuIHNlc2FtZQ==");
        assertThat(client.count("Task?status=requested")).isEqualTo(7);
    }

    @Test
    void a_wrong_password_is_not_tried_again() {
        record.opensTo("Basic other");
        assertThatThrownBy(() -> client.count("Task?status=requested")).hasMessageContaining("401");
    }

    @ParameterizedTest
    @ValueSource(ints = {301, 302, 303, 307, 308})
    void a_redirect_to_another_server_is_not_followed(int status) {
        record.server.stubFor(get(urlPathEqualTo("/fhir/Task"))
                .willReturn(aResponse().withStatus(status).withHeader("Location", stranger.baseUrl() + "/fhir/Task")));
        assertThatThrownBy(() -> client.count("Task?status=requested"))
                .isInstanceOf(RecordRefusal.class)
                .hasMessageContaining("record-points-elsewhere");
        assertThat(stranger.getAllServeEvents()).isEmpty();
    }

    @Test
    void a_page_link_to_another_server_is_not_followed() {
        record.server.stubFor(post(urlPathEqualTo("/fhir"))
                .withHeader("Authorization", equalTo("Basic YWRhcHRlcjpvcGVuIHNlc2FtZQ=="))
                .willReturn(
                        okJson("""
                        {"resourceType":"Bundle","type":"batch-response","entry":[{"response":{"status":"200 OK"},"resource":
                        {"resourceType":"Bundle","type":"searchset","link":[{"relation":"next","url":"%s/fhir?page=2"}]}}]}""".formatted(stranger.baseUrl())).withHeader("Content-Type", "application/fhir+json")));
        assertThatThrownBy(() -> client.gather(List.of("Task?status=requested")))
                .isInstanceOf(RecordRefusal.class)
                .hasMessageContaining("record-points-elsewhere")
                .hasMessageContaining("localhost");
        assertThat(stranger.getAllServeEvents()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"http://record.example.org/auth", "http://10.0.0.1/auth"})
    void an_assertion_is_not_sent_where_it_can_be_overheard(String url) {
        SmartDiscovery discovery = new SmartDiscovery(
                record.record(), Optional.of(URI.create(url)), new PlainHttp(Duration.ofSeconds(2), Optional.empty()));
        assertThatThrownBy(discovery::endpoint)
                .isInstanceOf(RecordRefusal.class)
                .hasMessageContaining("record-unguarded");
    }

    @Test
    void a_password_may_stand_in_a_file(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("password"), "open sesame\n");
        assertThat(Secret.of("file:" + file).reveal()).isEqualTo("open sesame");
        assertThat(Secret.of("open sesame").reveal()).isEqualTo("open sesame");
    }

    @Test
    void a_name_that_would_run_into_the_password_is_refused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Credentials.basic(new AccessSettings.Basic("a:b", Secret.of("c"))));
    }
}
