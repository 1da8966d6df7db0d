package org.lensward.flow.auth;

import static com.github.tomakehurst.wiremock.client.WireMock.aResponse;
import static com.github.tomakehurst.wiremock.client.WireMock.equalTo;
import static com.github.tomakehurst.wiremock.client.WireMock.get;
import static com.github.tomakehurst.wiremock.client.WireMock.okJson;
import static com.github.tomakehurst.wiremock.client.WireMock.post;
import static com.github.tomakehurst.wiremock.client.WireMock.postRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlEqualTo;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static com.github.tomakehurst.wiremock.core.WireMockConfiguration.wireMockConfig;

import com.github.tomakehurst.wiremock.WireMockServer;
import java.net.URI;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.lensward.flow.AdapterSettings.RecordServer;
import org.lensward.flow.RecordClient;
import org.lensward.record.Fhir;

/** A record that lets in who shows the right header, and its authorization server. */
final class TokenServer implements AutoCloseable {

    static final String CLIENT = "lensward-adapter";
    private static final String SMART = "/fhir/.well-known/smart-configuration";
    private static final String TOKEN = "/auth/token";
    private static final String COUNTED = "{\"resourceType\":\"Bundle\",\"type\":\"searchset\",\"total\":7}";

    final WireMockServer server = new WireMockServer(wireMockConfig().dynamicPort());

    TokenServer() {
        server.start();
        server.stubFor(get(urlEqualTo(SMART))
                .willReturn(okJson("{\"token_endpoint\":\"" + tokenUrl()
                        + "\",\"token_endpoint_auth_signing_alg_values_supported\":[\"RS384\",\"ES384\"]}")));
    }

    URI record() {
        return URI.create(server.baseUrl() + "/fhir");
    }

    String tokenUrl() {
        return server.baseUrl() + TOKEN;
    }

    void gives(String token, int seconds, String more) {
        server.stubFor(post(urlEqualTo(TOKEN))
                .willReturn(okJson("{\"access_token\":\"" + token + "\",\"token_type\":\"bearer\",\"expires_in\":"
                        + seconds + more + "}")));
    }

    void refusesToGive(int status, String body) {
        server.stubFor(post(urlEqualTo(TOKEN))
                .willReturn(aResponse().withStatus(status).withBody(body)));
    }

    /** Only this header opens the record. */
    void opensTo(String header) {
        server.stubFor(get(urlPathEqualTo("/fhir/Task")).willReturn(aResponse().withStatus(401)));
        server.stubFor(get(urlPathEqualTo("/fhir/Task"))
                .withHeader("Authorization", equalTo(header))
                .willReturn(okJson(COUNTED).withHeader("Content-Type", "application/fhir+json")));
    }

    /** The forms that asked for tokens, in order. */
    List<Map<String, String>> asked() {
        return server.findAll(postRequestedFor(urlEqualTo(TOKEN))).stream()
                .map(request -> Arrays.stream(request.getBodyAsString().split("&"))
                        .map(each -> each.split("=", 2))
                        .collect(Collectors.toMap(
                                each -> each[0], each -> URLDecoder.decode(each[1], StandardCharsets.UTF_8))))
                .toList();
    }

    TokenCredentials credentials(Path keys, Clock clock, List<Scope> scopes) {
        PlainHttp http = new PlainHttp(Duration.ofSeconds(20), Optional.empty());
        ClientAssertion assertion = new ClientAssertion(CLIENT, new SigningKeys(keys, clock), clock);
        SmartDiscovery discovery = new SmartDiscovery(record(), Optional.empty(), http);
        return new TokenCredentials(
                new TokenEndpoint(discovery, assertion, scopes, clock), Duration.ofSeconds(60), clock);
    }

    RecordClient client(Credentials credentials) {
        return new RecordClient(
                Fhir.r4(),
                new RecordServer(record(), Duration.ofSeconds(20)),
                new RecordDoorway(credentials, Optional.empty(), new Certificates(Optional.empty())));
    }

    @Override
    public void close() {
        server.stop();
    }
}
