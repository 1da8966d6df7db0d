package org.lensward.flow.auth;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JOSEObjectType;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.JWSSigner;
import com.nimbusds.jose.crypto.factories.DefaultJWSSignerFactory;
import com.nimbusds.jose.jwk.JWK;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.Set;
import java.util.UUID;

/**
 * The signed word that we are who we say (RFC 7523; SMART "Client authentication: asymmetric"): issuer and subject are the client id, the
 * audience the token endpoint, the end at most five minutes away, the id never used twice.
 */
final class ClientAssertion {

    private static final Duration LIFE = Duration.ofMinutes(4);

    private final String clientId;
    private final SigningKeys keys;
    private final Clock clock;

    ClientAssertion(String clientId, SigningKeys keys, Clock clock) {
        this.clientId = clientId;
        this.keys = keys;
        this.clock = clock;
    }

    /** One assertion, for one request. */
    String to(URI tokenUrl, Set<JWSAlgorithm> taken) {
        JWK key = keys.newest(taken);
        Instant now = clock.instant();
        JWTClaimsSet claims = new JWTClaimsSet.Builder()
                .issuer(clientId)
                .subject(clientId)
                .audience(tokenUrl.toString())
                .issueTime(Date.from(now))
                .expirationTime(Date.from(now.plus(LIFE)))
                .jwtID(UUID.randomUUID().toString())
                .build();
        JWSHeader header = new JWSHeader.Builder(SigningKeys.algorithm(key))
                .type(JOSEObjectType.JWT)
                .keyID(key.getKeyID())
                .build();
        return signed(new SignedJWT(header, claims), key);
    }

    private static String signed(SignedJWT assertion, JWK key) {
        try {
            JWSSigner signer = new DefaultJWSSignerFactory()
                    .createJWSSigner(key, assertion.getHeader().getAlgorithm());
            assertion.sign(signer);
            return assertion.serialize();
        } catch (JOSEException impossible) {
            throw new IllegalStateException("The key " + key.getKeyID() + " does not sign", impossible);
        }
    }
}
