package org.lensward.flow.auth;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How the adapter signs in to the record, under {@code lensward.record-access.*}.
 *
 * @param method what is shown
 * @param basic name and password, for {@link AccessMethod#BASIC}
 * @param service the backend service, for {@link AccessMethod#BACKEND_SERVICE}
 * @param tlsBundle the SSL bundle ({@code spring.ssl.bundle.*}) of our certificate and of those we trust; empty uses Java's own
 */
@ConfigurationProperties("lensward.record-access")
public record AccessSettings(
        @DefaultValue("none") AccessMethod method,
        @DefaultValue Basic basic,
        @DefaultValue Service service,
        @DefaultValue("") String tlsBundle) {

    /**
     * Name and password.
     *
     * @param name as the record knows the adapter
     * @param password the password, or {@code file:} and where it is
     */
    public record Basic(
            @DefaultValue("") String name, @DefaultValue("") Secret password) {}

    /**
     * A backend service.
     *
     * @param clientId as it is registered with the record's authorization server
     * @param keys a folder of private keys as JWK ({@code *.jwk}, each with its {@code kid}), or one such file
     * @param tokenUrl where tokens are given; the record's {@code .well-known/smart-configuration} says it if absent
     * @param scopes what is asked for; see {@link LeastScopes}
     * @param renewBefore how long before its end a token is renewed
     */
    public record Service(
            @DefaultValue("") String clientId,
            @DefaultValue("") Path keys,
            @Nullable URI tokenUrl,
            @DefaultValue List<String> scopes,
            @DefaultValue("60s") Duration renewBefore) {

        /** The scopes asked for: the hospital's, or the least that the adapter can do its work with. */
        List<Scope> asked() {
            return (scopes.isEmpty() ? LeastScopes.ALL : scopes)
                    .stream().map(Scope::parse).toList();
        }
    }
}
