package org.lensward.board.access;

import static com.github.tomakehurst.wiremock.client.WireMock.containing;
import static com.github.tomakehurst.wiremock.client.WireMock.get;
import static com.github.tomakehurst.wiremock.client.WireMock.okJson;
import static com.github.tomakehurst.wiremock.client.WireMock.post;
import static com.github.tomakehurst.wiremock.client.WireMock.postRequestedFor;
import static com.github.tomakehurst.wiremock.client.WireMock.urlPathEqualTo;
import static com.github.tomakehurst.wiremock.core.WireMockConfiguration.options;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.github.tomakehurst.wiremock.WireMockServer;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import java.net.CookieManager;
import java.net.InetAddress;
import java.net.URI;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.lensward.board.BoardConfiguration;
import org.lensward.flow.Adapter;
import org.springframework.boot.autoconfigure.web.ServerProperties;

/** A running adapter as it is set up: closed, open to its own machine, or with the hospital's identity provider. No record is needed. */
class WaysInTest {

    private final HttpClient http =
            HttpClient.newBuilder().cookieHandler(new CookieManager()).build();

    private static Adapter adapter(Map<String, Object> access) throws Exception {
        Map<String, Object> settings = new HashMap<>(access);
        settings.put("lensward.record.url", "http://localhost:1/fhir");
        settings.put("camel.main.auto-startup", "false");
        settings.put("server.port", "0");
        settings.put(
                "spring.artemis.embedded.data-directory",
                Files.createTempDirectory("queue").toString());
        return Adapter.serve(settings, BoardConfiguration.class);
    }

    private HttpResponse<String> ask(String address) throws Exception {
        return http.send(HttpRequest.newBuilder(URI.create(address)).build(), BodyHandlers.ofString());
    }

    @Test
    void with_nothing_set_up_nobody_is_let_in_and_the_page_says_so() throws Exception {
        try (Adapter adapter = adapter(Map.of())) {
            String base = "http://localhost:" + adapter.port();
            assertThat(ask(base + "/sign-in").body())
                    .contains("Nobody can sign in yet")
                    .doesNotContain("<form");
            for (String page : List.of("/", "/day/2026-12-10", "/bank", "/flow", "/eye/b", "/anything")) {
                HttpResponse<String> answer = ask(base + page);
                assertThat(answer.statusCode()).as(page).isEqualTo(302);
                assertThat(answer.headers().firstValue("Location").orElse("")).endsWith("/sign-in");
            }
            for (String call : List.of("/api/plans/b", "/api/openapi", "/fhir/x", "/actuator/env")) {
                assertThat(ask(base + call).statusCode()).as(call).isEqualTo(401);
            }
        }
    }

    @Test
    void open_is_for_this_machine_alone() throws Exception {
        AccessSettings open = new AccessSettings(true, null, null, Map.of(), Duration.ofMinutes(1));
        ServerProperties server = new ServerProperties();
        assertThatThrownBy(() -> Openness.of(open, server)).isInstanceOf(IllegalStateException.class);
        server.setAddress(InetAddress.getByName("192.0.2.1"));
        assertThatThrownBy(() -> Openness.of(open, server)).hasMessageContaining("127.0.0.1");
        try (Adapter adapter = adapter(Map.of("lensward.access.open", "true"))) {
            HttpResponse<String> described = ask("http://localhost:" + adapter.port() + "/api/openapi");
            assertThat(described.statusCode()).isEqualTo(200);
        }
    }

    /** The code flow of OpenID Connect Core 1.0, section 3.1, against a provider of the test's own. */
    @Test
    void a_person_signs_in_at_the_hospitals_identity_provider() throws Exception {
        WireMockServer provider = new WireMockServer(options().dynamicPort());
        provider.start();
        RSAKey key = new RSAKeyGenerator(2048).keyID("k").generate();
        discoverable(provider, key);
        Map<String, Object> access = Map.of(
                "lensward.access.people.issuer", provider.baseUrl(),
                "lensward.access.people.client-id", "lensward",
                "lensward.access.people.client-secret", "secret",
                "lensward.access.people.roles-claim", "groups",
                "lensward.access.roles[Eye Surgeons]", "surgeon");
        try (Adapter adapter = adapter(access)) {
            String base = "http://localhost:" + adapter.port();
            assertThat(ask(base + "/sign-in").body()).contains("hospital account");
            String sent = ask(base + "/oauth2/authorization/hospital")
                    .headers()
                    .firstValue("Location")
                    .orElseThrow();
            assertThat(sent).startsWith(provider.baseUrl() + "/authorize?").contains("scope=openid%20profile");
            provider.stubFor(post(urlPathEqualTo("/token"))
                    .willReturn(okJson("{\"access_token\": \"a\", \"token_type\": \"Bearer\", \"id_token\": \""
                            + idToken(provider.baseUrl(), parameter(sent, "nonce"), key) + "\"}")));
            HttpResponse<String> back = ask(base + "/login/oauth2/code/hospital?code=c&state="
                    + URLEncoder.encode(parameter(sent, "state"), StandardCharsets.UTF_8));
            assertThat(back.headers().firstValue("Location").orElse("")).doesNotContain("refused");
            provider.verify(postRequestedFor(urlPathEqualTo("/token"))
                    .withRequestBody(containing("grant_type=authorization_code")));
            String page = ask(base + "/signed-in").body();
            assertThat(page).contains("Ms Thorn", "surgeon");
            assertThat(ask(base + "/flow").statusCode()).isEqualTo(403);
        } finally {
            provider.stop();
        }
    }

    private static void discoverable(WireMockServer provider, RSAKey key) {
        String base = provider.baseUrl();
        provider.stubFor(get(urlPathEqualTo("/.well-known/openid-configuration"))
                .willReturn(okJson("{\"issuer\": \"" + base + "\", \"authorization_endpoint\": \"" + base
                        + "/authorize\", \"token_endpoint\": \"" + base + "/token\", \"jwks_uri\": \"" + base
                        + "/jwks\", \"response_types_supported\": [\"code\"], \"subject_types_supported\":"
                        + " [\"public\"], \"id_token_signing_alg_values_supported\": [\"RS256\"]}")));
        provider.stubFor(get(urlPathEqualTo("/jwks")).willReturn(okJson(new JWKSet(key.toPublicJWK()).toString())));
    }

    private static String idToken(String issuer, String nonce, RSAKey key) throws Exception {
        SignedJWT token = new SignedJWT(
                new JWSHeader.Builder(JWSAlgorithm.RS256).keyID("k").build(),
                new JWTClaimsSet.Builder()
                        .issuer(issuer)
                        .subject("s-1")
                        .audience("lensward")
                        .issueTime(new Date())
                        .expirationTime(Date.from(Instant.now().plusSeconds(300)))
                        .claim("nonce", nonce)
                        .claim("name", "Ms Thorn")
                        .claim("groups", List.of("Eye Surgeons", "Choir"))
                        .build());
        token.sign(new RSASSASigner(key));
        return token.serialize();
    }

    private static String parameter(String address, String name) {
        Matcher found = Pattern.compile("[?&]" + name + "=([^&]+)").matcher(address);
        assertThat(found.find()).isTrue();
        return URLDecoder.decode(found.group(1), StandardCharsets.UTF_8);
    }
}
