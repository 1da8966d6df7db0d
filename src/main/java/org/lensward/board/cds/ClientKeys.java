package org.lensward.board.cds;

import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.KeySourceException;
import com.nimbusds.jose.jwk.JWK;
import com.nimbusds.jose.jwk.JWKMatcher;
import com.nimbusds.jose.jwk.JWKSelector;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.source.JWKSource;
import com.nimbusds.jose.jwk.source.JWKSourceBuilder;
import com.nimbusds.jose.jwk.source.RateLimitReachedException;
import com.nimbusds.jose.proc.SecurityContext;
import java.io.IOException;
import java.net.MalformedURLException;
import java.nio.file.Path;
import java.text.ParseException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The public keys of the clients, from where the settings say; an address in a token is never followed. */
final class ClientKeys {

    private static final Logger LOG = LoggerFactory.getLogger(ClientKeys.class);

    private final Map<String, JWKSource<SecurityContext>> fetched = new ConcurrentHashMap<>();

    /** The keys that may have signed a token with that header. */
    List<JWK> of(CdsSettings.Client client, JWSHeader header) {
        JWKSelector wanted = new JWKSelector(JWKMatcher.forJWSHeader(header));
        try {
            return "file".equals(client.keys().getScheme())
                    ? wanted.select(JWKSet.load(Path.of(client.keys()).toFile()))
                    : source(client).get(wanted, null);
        } catch (RateLimitReachedException unknownKeyAgain) {
            LOG.debug("Keys of {} were looked up a moment ago", client.issuer(), unknownKeyAgain);
            return List.of();
        } catch (KeySourceException | IOException | ParseException away) {
            LOG.warn("The keys of {} cannot be read: {}", client.issuer(), away.getMessage());
            throw Refusal.withoutKeys();
        }
    }

    private JWKSource<SecurityContext> source(CdsSettings.Client client) throws MalformedURLException {
        JWKSource<SecurityContext> known = fetched.get(client.issuer());
        if (known != null) {
            return known;
        }
        JWKSource<SecurityContext> source = JWKSourceBuilder.<SecurityContext>create(
                        client.keys().toURL())
                .refreshAheadCache(false)
                .build();
        JWKSource<SecurityContext> first = fetched.putIfAbsent(client.issuer(), source);
        return first == null ? source : first;
    }
}
