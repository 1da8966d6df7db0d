package org.lensward.flow.auth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ca.uhn.fhir.rest.client.exceptions.FhirClientConnectionException;
import ca.uhn.fhir.rest.server.exceptions.AuthenticationException;
import com.nimbusds.jose.JOSEObjectType;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.jwk.JWK;
import com.nimbusds.jose.jwk.source.ImmutableJWKSet;
import com.nimbusds.jose.proc.JWSVerificationKeySelector;
import com.nimbusds.jose.proc.SecurityContext;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import com.nimbusds.jwt.proc.DefaultJWTClaimsVerifier;
import com.nimbusds.jwt.proc.DefaultJWTProcessor;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.flow.RecordClient;
import org.lensward.flow.RecordRefusal;

/** SMART App Launch 2.2.0, "Backend Services" and "Client Authentication: Asymmetric": what a server there demands, by nimbus-jose-jwt. */
class BackendServiceTest {

    private static final String LONG_AGO = "2020-01-01T00:00:00Z";
    private static final String LATER = "2099-01-01T00:00:00Z";
    private static final List<Scope> TASKS = List.of(Scope.parse("system/Task.cus"));

    @TempDir
    private Path folder;

    private final TokenServer server = new TokenServer();
    private final TickingClock clock = new TickingClock(Instant.now());
    private JWK key;

    @BeforeEach
    void key() throws Exception {
        key = Keys.put(folder, Keys.elliptic("first", LONG_AGO, LATER));
    }

    @AfterEach
    void stop() {
        server.close();
    }

    private RecordClient client() {
        return server.client(server.credentials(folder, clock, TASKS));
    }

    private static int tasks(RecordClient client) {
        return client.count("Task?status=requested");
    }

    /** As an authorization server does it. */
    private JWTClaimsSet verified(String assertion, JWSAlgorithm algorithm) throws Exception {
        DefaultJWTProcessor<SecurityContext> server = new DefaultJWTProcessor<>();
        server.setJWSKeySelector(new JWSVerificationKeySelector<>(
                algorithm, new ImmutableJWKSet<>(new SigningKeys(folder, Clock.systemUTC()).published())));
        server.setJWTClaimsSetVerifier(new DefaultJWTClaimsVerifier<>(
                this.server.tokenUrl(),
                new JWTClaimsSet.Builder()
                        .issuer(TokenServer.CLIENT)
                        .subject(TokenServer.CLIENT)
                        .build(),
                Set.of("exp", "jti")));
        return server.process(assertion, null);
    }

    @ParameterizedTest
    @ValueSource(strings = {"ES384", "RS384"})
    void a_server_can_verify_every_assertion_with_the_published_key(String algorithm) throws Exception {
        if (algorithm.equals("RS384")) {
            key = Keys.put(folder, Keys.rsa("rsa", "2021-01-01T00:00:00Z", LATER));
        }
        server.gives("one", 1, "");
        server.opensTo("Bearer one");
        RecordClient client = client();
        assertThat(tasks(client)).isEqualTo(7);
        clock.pass(Duration.ofSeconds(2));
        tasks(client);

        List<Map<String, String>> asked = server.asked();
        assertThat(asked).hasSize(2).allSatisfy(form -> assertThat(form)
                .containsEntry("grant_type", "client_credentials")
                .containsEntry("scope", "system/Task.cus")
                .containsEntry("client_assertion_type", "urn:ietf:params:oauth:client-assertion-type:jwt-bearer"));
        List<JWTClaimsSet> claims = List.of(
                verified(Objects.requireNonNull(asked.get(0).get("client_assertion")), JWSAlgorithm.parse(algorithm)),
                verified(Objects.requireNonNull(asked.get(1).get("client_assertion")), JWSAlgorithm.parse(algorithm)));
        assertThat(claims).extracting(JWTClaimsSet::getJWTID).doesNotHaveDuplicates();
        assertThat(claims).allSatisfy(each -> assertThat(Duration.between(
                        each.getIssueTime().toInstant(),
                        each.getExpirationTime().toInstant()))
                .isLessThanOrEqualTo(Duration.ofMinutes(5)));
        SignedJWT assertion =
                SignedJWT.parse(Objects.requireNonNull(asked.get(0).get("client_assertion")));
        assertThat(assertion.getHeader().getKeyID()).isEqualTo(key.getKeyID());
        assertThat(assertion.getHeader().getType()).isEqualTo(JOSEObjectType.JWT);
    }

    @Test
    void a_changed_key_signs_the_next_request_without_a_restart() throws Exception {
        server.gives("one", 1, "");
        server.opensTo("Bearer one");
        RecordClient client = client();
        tasks(client);
        Keys.put(folder, Keys.elliptic("second", "2026-01-01T00:00:00Z", LATER));
        clock.pass(Duration.ofSeconds(2));
        tasks(client);
        SignedJWT last = SignedJWT.parse(server.asked().get(1).get("client_assertion"));
        assertThat(last.getHeader().getKeyID()).isEqualTo("second");
    }

    @Nested
    class Given_a_token {

        @Test
        void it_is_used_again_and_renewed_before_it_ends() {
            server.gives("one", 300, "");
            server.opensTo("Bearer one");
            RecordClient client = client();
            tasks(client);
            clock.pass(Duration.ofSeconds(239));
            tasks(client);
            assertThat(server.asked()).hasSize(1);
            server.gives("two", 300, "");
            server.opensTo("Bearer two");
            clock.pass(Duration.ofSeconds(2));
            tasks(client);
            assertThat(server.asked()).hasSize(2);
        }

        @Test
        void while_it_stands_a_token_server_that_is_away_does_no_harm() {
            server.gives("one", 300, "");
            server.opensTo("Bearer one");
            RecordClient client = client();
            tasks(client);
            server.refusesToGive(503, "");
            clock.pass(Duration.ofSeconds(250));
            assertThat(tasks(client)).isEqualTo(7);
            clock.pass(Duration.ofSeconds(60));
            assertThatThrownBy(() -> tasks(client)).isInstanceOf(FhirClientConnectionException.class);
        }

        @Test
        void many_who_need_a_new_one_at_once_ask_once() throws Exception {
            server.gives("one", 300, "");
            server.opensTo("Bearer one");
            TokenCredentials credentials = server.credentials(folder, clock, TASKS);
            int many = 12;
            CountDownLatch ready = new CountDownLatch(many);
            ExecutorService threads = Executors.newFixedThreadPool(many);
            try {
                List<Future<String>> headers = IntStream.range(0, many)
                        .mapToObj(each -> threads.submit(() -> {
                            ready.countDown();
                            ready.await();
                            return credentials.header().orElseThrow();
                        }))
                        .toList();
                for (Future<String> header : headers) {
                    assertThat(header.get()).isEqualTo("Bearer one");
                }
            } finally {
                threads.shutdownNow();
            }
            assertThat(server.asked()).hasSize(1);
            assertThat(credentials.renewals()).isEqualTo(1);
        }

        @Test
        void the_record_no_longer_takes_one_more_is_asked_for_and_the_request_repeated() {
            server.gives("one", 300, "");
            server.opensTo("Bearer one");
            RecordClient client = client();
            tasks(client);
            server.gives("two", 300, "");
            server.opensTo("Bearer two");
            assertThat(tasks(client)).isEqualTo(7);
            assertThat(server.asked()).hasSize(2);
        }

        @Test
        void a_record_that_takes_none_is_asked_twice_and_not_for_ever() {
            server.gives("one", 300, "");
            server.opensTo("Bearer never");
            RecordClient client = client();
            assertThatThrownBy(() -> tasks(client)).isInstanceOf(AuthenticationException.class);
            assertThat(server.asked()).hasSize(2);
        }
    }

    @Test
    void a_scope_that_is_not_granted_is_named() {
        server.gives("one", 300, ",\"scope\":\"system/Task.rs\"");
        assertThatThrownBy(() -> tasks(client()))
                .isInstanceOf(RecordRefusal.class)
                .hasMessageContaining("record-scope-missing")
                .hasMessageContaining("system/Task.cu");
    }

    @Test
    void a_server_of_tokens_that_refuses_is_named_with_its_reason_and_none_of_its_words() {
        server.refusesToGive(400, "{\"error\":\"invalid_client\",\"error_description\":\"Ada Tillwick\"}");
        assertThatThrownBy(() -> tasks(client()))
                .isInstanceOf(RecordRefusal.class)
                .hasMessageContaining("record-sign-in-refused")
                .hasMessageContaining("invalid_client")
                .hasMessageNotContaining("Tillwick");
    }

    @Test
    void nothing_printed_shows_a_token_or_a_password() {
        AccessToken token = new AccessToken("very-secret", Keys.NOW, Keys.NOW.plusSeconds(300));
        assertThat(token.toString()).doesNotContain("very-secret");
        assertThat(new AccessSettings.Basic("adapter", Secret.of("very-secret")).toString())
                .doesNotContain("very-secret");
    }
}
