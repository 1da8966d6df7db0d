package org.lensward.flow.auth;

import com.fasterxml.jackson.databind.JsonNode;
import com.nimbusds.jose.JWSAlgorithm;
import java.io.IOException;
import java.net.URI;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import org.lensward.finding.FindingCode;
import org.lensward.flow.RecordRefusal;

/** Where tokens are given: as the settings say, or as the record's {@code .well-known/smart-configuration} does. */
final class SmartDiscovery {

    static final Set<JWSAlgorithm> OURS = Set.of(JWSAlgorithm.ES384, JWSAlgorithm.RS384);

    private final Origin record;
    private final Optional<URI> told;
    private final PlainHttp http;
    private volatile Optional<Endpoint> found = Optional.empty();

    SmartDiscovery(URI record, Optional<URI> told, PlainHttp http) {
        this.record = Origin.of(record);
        this.told = told;
        this.http = http;
    }

    /**
     * Where and how to ask for a token.
     *
     * @param url the token endpoint
     * @param algorithms those of ours that it takes
     */
    record Endpoint(URI url, Set<JWSAlgorithm> algorithms) {}

    PlainHttp http() {
        return http;
    }

    Endpoint endpoint() throws IOException {
        if (told.isPresent()) {
            return new Endpoint(guarded(told.get()), OURS);
        }
        if (found.isEmpty()) {
            found = Optional.of(asked());
        }
        return found.get();
    }

    private Endpoint asked() throws IOException {
        PlainHttp.Answer answer = http.get(record.below("/.well-known/smart-configuration"));
        String url = answer.json().path("token_endpoint").asText();
        if (answer.status() != 200 || url.isEmpty()) {
            throw new IOException("The record's smart-configuration names no token endpoint: " + answer.status());
        }
        return new Endpoint(guarded(URI.create(url)), taken(answer.json()));
    }

    private static Set<JWSAlgorithm> taken(JsonNode configuration) {
        JsonNode named = configuration.path("token_endpoint_auth_signing_alg_values_supported");
        Set<JWSAlgorithm> taken = new LinkedHashSet<>();
        named.forEach(each -> taken.add(JWSAlgorithm.parse(each.asText())));
        taken.retainAll(OURS);
        return taken.isEmpty() && named.isEmpty() ? OURS : taken;
    }

    /** An assertion goes over TLS, or stays on this machine. */
    private static URI guarded(URI url) {
        if (!Origin.of(url).isGuarded()) {
            throw new RecordRefusal(FindingCode.RECORD_UNGUARDED, url.toString(), url.getHost());
        }
        return url;
    }
}
