package org.lensward.flow.auth;

import com.fasterxml.jackson.databind.JsonNode;
import com.nimbusds.jose.JWSAlgorithm;
import java.io.IOException;
import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.lensward.finding.FindingCode;
import org.lensward.flow.RecordRefusal;

/** Asks the record's authorization server for a token, and looks what it allows. */
final class TokenEndpoint implements TokenCredentials.Source {

    /** RFC 6749, 5.2: what a server may give as its reason; anything else is not repeated. */
    private static final Set<String> REASONS = Set.of(
            "invalid_request",
            "invalid_client",
            "invalid_grant",
            "unauthorized_client",
            "unsupported_grant_type",
            "invalid_scope");

    private static final int SHORTEST_LIFE = 1;
    private static final int USUAL_LIFE = 300;

    private final SmartDiscovery discovery;
    private final ClientAssertion assertion;
    private final List<Scope> asked;
    private final Clock clock;

    TokenEndpoint(SmartDiscovery discovery, ClientAssertion assertion, List<Scope> asked, Clock clock) {
        this.discovery = discovery;
        this.assertion = assertion;
        this.asked = asked;
        this.clock = clock;
    }

    @Override
    public AccessToken ask() throws IOException {
        SmartDiscovery.Endpoint endpoint = discovery.endpoint();
        Instant now = clock.instant();
        PlainHttp.Answer answer = discovery.http().post(endpoint.url(), form(endpoint.url(), endpoint.algorithms()));
        if (answer.status() != 200) {
            throw refused(endpoint.url(), answer);
        }
        return token(endpoint.url(), answer.json(), now);
    }

    private Map<String, String> form(URI url, Set<JWSAlgorithm> taken) {
        Map<String, String> form = new LinkedHashMap<>();
        form.put("grant_type", "client_credentials");
        form.put("scope", asked.stream().map(Scope::toString).collect(Collectors.joining(" ")));
        form.put("client_assertion_type", "urn:ietf:params:oauth:client-assertion-type:jwt-bearer");
        form.put("client_assertion", assertion.to(url, taken));
        return form;
    }

    /** A server that is only away, or busy, is asked again. */
    private static RuntimeException refused(URI url, PlainHttp.Answer answer) throws IOException {
        if (answer.status() >= 500 || answer.status() == 429) {
            throw new IOException("The token endpoint answered " + answer.status());
        }
        String reason = answer.json().path("error").asText();
        return new RecordRefusal(
                FindingCode.RECORD_SIGN_IN_REFUSED,
                url.toString(),
                url.getHost(),
                REASONS.contains(reason) ? reason : String.valueOf(answer.status()));
    }

    /** Without a scope in the answer all that was asked for is granted (RFC 6749, 5.1). */
    private AccessToken token(URI url, JsonNode answer, Instant now) throws IOException {
        String value = answer.path("access_token").asText();
        if (value.isEmpty() || !answer.path("token_type").asText().equalsIgnoreCase("bearer")) {
            throw new IOException("The token endpoint gave no bearer token");
        }
        if (answer.has("scope")) {
            List<Scope> lacking =
                    LeastScopes.lacking(asked, answer.path("scope").asText());
            if (!lacking.isEmpty()) {
                throw new RecordRefusal(
                        FindingCode.RECORD_SCOPE_MISSING,
                        url.toString(),
                        lacking.stream().map(Scope::toString).collect(Collectors.joining(" ")));
            }
        }
        int life = Math.max(SHORTEST_LIFE, answer.path("expires_in").asInt(USUAL_LIFE));
        return new AccessToken(value, now, now.plusSeconds(life));
    }
}
