package org.lensward.board.cds;

import jakarta.validation.Valid;
import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;
import org.springframework.validation.annotation.Validated;

/**
 * Who may call the hooks, under {@code lensward.cds.*}. Without a client nobody may.
 *
 * @param baseUrl our address as clients call it, without {@code /cds-services}; their tokens are made out to it
 * @param clients those trusted
 * @param open anybody may call, without a token; for the demo alone
 * @param tokenLife the longest a token may be valid; tokens are remembered so long that none is used twice
 * @param origins the web origins from which a browser may call
 * @param stockAge how old the stock check may be that a card speaks of
 * @param bodyLimit the longest request
 */
@Validated
@ConfigurationProperties("lensward.cds")
public record CdsSettings(
        @NotNull @DefaultValue("http://localhost:8094") URI baseUrl,
        @Valid @DefaultValue List<Client> clients,
        @DefaultValue("false") boolean open,
        @NotNull @DefaultValue("1h") Duration tokenLife,
        @DefaultValue List<String> origins,
        @NotNull @DefaultValue("1m") Duration stockAge,
        @NotNull @DefaultValue("5MB") DataSize bodyLimit) {

    private static final Set<String> HERE = Set.of("localhost", "127.0.0.1", "[::1]");

    public CdsSettings {
        clients = List.copyOf(clients);
        origins = List.copyOf(origins);
    }

    /** The address of one of our services. */
    public String endpoint(String service) {
        String base = baseUrl.toString();
        return (base.endsWith("/") ? base : base + "/") + "cds-services/" + service;
    }

    /**
     * A clinical system that may call.
     *
     * @param issuer the issuer its tokens name
     * @param keys where its public keys (a JWK Set, RFC 7517) are: an {@code https:} address or a {@code file:}
     */
    public record Client(@NotBlank String issuer, @NotNull URI keys) {

        /** Whether the keys come from a file or over a channel nobody can change them on. */
        @AssertTrue(message = "keys come from https: or file:; plain http: from this machine only")
        public boolean isSafelyKept() {
            String scheme = Objects.requireNonNullElse(keys.getScheme(), "");
            return scheme.equals("https")
                    || scheme.equals("file")
                    || (scheme.equals("http") && HERE.contains(Objects.requireNonNullElse(keys.getHost(), "")));
        }
    }
}
