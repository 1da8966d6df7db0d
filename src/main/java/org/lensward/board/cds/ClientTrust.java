package org.lensward.board.cds;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.factories.DefaultJWSVerifierFactory;
import com.nimbusds.jose.jwk.AsymmetricJWK;
import com.nimbusds.jose.jwk.JWK;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import java.text.ParseException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Who calls, by a signed JSON Web Token (CDS Hooks 2.0, trusting CDS clients; RFC 7519). */
final class ClientTrust {

    private static final Logger LOG = LoggerFactory.getLogger(ClientTrust.class);

    /** The two that CDS Hooks 2.0 recommends. Never none, never a shared secret. */
    private static final Set<JWSAlgorithm> ALGORITHMS = Set.of(JWSAlgorithm.ES384, JWSAlgorithm.RS384);

    /** How far two clocks may be apart. Common practice, no source. */
    private static final Duration APART = Duration.ofSeconds(60);

    private static final String SCHEME = "Bearer ";

    private final CdsSettings settings;
    private final Clock clock;
    private final ClientKeys keys = new ClientKeys();
    private final UsedTokens used = new UsedTokens();

    ClientTrust(CdsSettings settings, Clock clock) {
        this.settings = settings;
        this.clock = clock;
    }

    /**
     * The issuer of a call's token, if it is to be trusted.
     *
     * @param authorization the header, as sent
     * @param endpoints the addresses the token may be made out to
     */
    String caller(Optional<String> authorization, List<String> endpoints) {
        if (settings.open()) {
            return "anybody";
        }
        String bearer = authorization
                .filter(header -> header.regionMatches(true, 0, SCHEME, 0, SCHEME.length()))
                .map(header -> header.substring(SCHEME.length()).strip())
                .orElseThrow(() -> Refusal.untrusted("The call has no bearer token."));
        try {
            return caller(SignedJWT.parse(bearer), endpoints);
        } catch (ParseException | IllegalArgumentException noToken) {
            LOG.debug("No token", noToken);
            throw Refusal.untrusted("The token is not a signed JSON Web Token.");
        }
    }

    private String caller(SignedJWT token, List<String> endpoints) throws ParseException {
        JWTClaimsSet claims = token.getJWTClaimsSet();
        CdsSettings.Client client = settings.clients().stream()
                .filter(each -> each.issuer().equals(claims.getIssuer()))
                .findFirst()
                .orElseThrow(() -> Refusal.untrusted("The token's issuer is not among the clients."));
        header(token.getHeader(), client);
        if (!isSigned(token, client)) {
            throw Refusal.untrusted("No key of the client verifies the token's signature.");
        }
        if (claims.getAudience().stream().noneMatch(endpoints::contains)) {
            throw Refusal.untrusted("The token is not made out (aud) to this service.");
        }
        Instant until = until(claims);
        String id = claims.getJWTID();
        if (id == null || id.isBlank()) {
            throw Refusal.untrusted("The token has no id (jti).");
        }
        if (!used.use(client.issuer() + " " + id, until.plus(APART), clock.instant())) {
            throw Refusal.untrusted("The token was used before.");
        }
        return client.issuer();
    }

    private static void header(JWSHeader header, CdsSettings.Client client) {
        if (!ALGORITHMS.contains(header.getAlgorithm())) {
            throw Refusal.untrusted("The token is signed by neither ES384 nor RS384.");
        }
        if (header.getKeyID() == null) {
            throw Refusal.untrusted("The token names no key (kid).");
        }
        boolean elsewhere = header.getJWKURL() != null
                && !"file".equals(client.keys().getScheme())
                && !header.getJWKURL().equals(client.keys());
        if (elsewhere) {
            throw Refusal.untrusted("The token names keys (jku) that are not those of the client.");
        }
    }

    private boolean isSigned(SignedJWT token, CdsSettings.Client client) {
        return keys.of(client, token.getHeader()).stream().anyMatch(key -> verifies(key, token));
    }

    private static boolean verifies(JWK key, SignedJWT token) {
        try {
            return key instanceof AsymmetricJWK pair
                    && token.verify(
                            new DefaultJWSVerifierFactory().createJWSVerifier(token.getHeader(), pair.toPublicKey()));
        } catch (JOSEException unfit) {
            LOG.debug("A key that does not fit", unfit);
            return false;
        }
    }

    /** When the token expires; refused where it has, is not valid yet, or would be valid for too long. */
    private Instant until(JWTClaimsSet claims) {
        Instant issued = instant(claims.getIssueTime(), "iat");
        Instant until = instant(claims.getExpirationTime(), "exp");
        Instant now = clock.instant();
        if (until.isBefore(now.minus(APART))) {
            throw Refusal.untrusted("The token has expired.");
        }
        if (issued.isAfter(now.plus(APART))) {
            throw Refusal.untrusted("The token is issued in the future.");
        }
        if (Duration.between(issued, until).compareTo(settings.tokenLife()) > 0) {
            throw Refusal.untrusted("The token is valid for longer than lensward.cds.token-life.");
        }
        return until;
    }

    private static Instant instant(@Nullable Date time, String claim) {
        return Optional.ofNullable(time)
                .map(Date::toInstant)
                .orElseThrow(() -> Refusal.untrusted("The token has no " + claim + "."));
    }
}
