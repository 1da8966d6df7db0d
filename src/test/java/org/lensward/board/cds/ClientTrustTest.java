package org.lensward.board.cds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.springframework.http.HttpStatus;

/** What the settings make of a call, and how long a token is remembered (RFC 7519, "jti"). */
class ClientTrustTest {

    private static final List<String> HERE = List.of(CallingClients.BASE + "/cds-services/patient-view");

    private static ClientTrust trust(Map<String, Object> settings, Instant now) {
        return new ClientTrust(CdsSettingsTest.of(settings), Clock.fixed(now, ZoneOffset.UTC));
    }

    private static Optional<String> bearer() {
        return Optional.of("Bearer " + CallingClients.token("patient-view"));
    }

    @Test
    void without_clients_even_a_good_token_is_refused() {
        assertThatThrownBy(() -> trust(Map.of(), Instant.now()).caller(bearer(), HERE))
                .isInstanceOfSatisfying(Refusal.class, refused -> assertThat(refused.getStatusCode())
                        .isEqualTo(HttpStatus.UNAUTHORIZED));
    }

    @Test
    void opened_for_the_demo_anybody_may_call() {
        assertThat(trust(Map.of("lensward.cds.open", "true"), Instant.now()).caller(Optional.empty(), HERE))
                .isEqualTo("anybody");
    }

    @Test
    void a_scheme_is_read_whatever_its_case_and_no_other_than_bearer() {
        ClientTrust trust = trust(CallingClients.settings(), Instant.now());
        assertThat(trust.caller(bearer().map(header -> header.replace("Bearer", "bearer")), HERE))
                .isEqualTo(CallingClients.WITH_FILE);
        assertThatThrownBy(() -> trust.caller(bearer().map(header -> header.replace("Bearer", "Basic")), HERE))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void a_token_is_good_for_a_minute_of_difference_between_clocks_and_no_longer() {
        Instant expires = Instant.now().plusSeconds(240);
        assertThat(trust(CallingClients.settings(), expires.plusSeconds(50)).caller(bearer(), HERE))
                .isEqualTo(CallingClients.WITH_FILE);
        assertThatThrownBy(() -> trust(CallingClients.settings(), expires.plusSeconds(70))
                        .caller(bearer(), HERE))
                .hasMessageContaining("expired");
    }

    @Test
    void keys_that_cannot_be_read_now_are_not_the_callers_fault() {
        for (URI nowhere : List.of(URI.create("http://localhost:1/keys"), URI.create("file:///no/such/keys.json"))) {
            Map<String, Object> settings = new HashMap<>(CallingClients.settings());
            settings.put("lensward.cds.clients[0].keys", nowhere.toString());
            assertThatThrownBy(() -> trust(settings, Instant.now()).caller(bearer(), HERE))
                    .isInstanceOfSatisfying(Refusal.class, refused -> assertThat(refused.getStatusCode())
                            .isEqualTo(HttpStatus.SERVICE_UNAVAILABLE));
        }
    }

    @Test
    void a_token_is_remembered_until_it_could_not_be_used_anyway() {
        UsedTokens used = new UsedTokens();
        Instant now = Instant.parse("2026-11-25T10:00:00Z");
        assertThat(used.use("one", now.plusSeconds(60), now)).isTrue();
        assertThat(used.use("one", now.plusSeconds(60), now.plusSeconds(60))).isFalse();
        assertThat(used.use("other", now.plusSeconds(60), now)).isTrue();
        assertThat(used.use("one", now.plus(Duration.ofHours(1)), now.plusSeconds(61)))
                .isTrue();
    }
}
