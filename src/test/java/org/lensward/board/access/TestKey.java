package org.lensward.board.access;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JOSEObjectType;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.ECDSASigner;
import com.nimbusds.jose.jwk.Curve;
import com.nimbusds.jose.jwk.ECKey;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.gen.ECKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Map;

/** An issuer of tokens, with a key of its own, for the tests of calls. */
public final class TestKey {

    static final String ISSUER = "https://issuer.example";
    static final String AUDIENCE = "lensward-of-the-tests";

    private final ECKey key;
    private final Path published;

    public TestKey() throws JOSEException, IOException {
        key = new ECKeyGenerator(Curve.P_384).keyID("test").generate();
        published = Files.createTempFile("keys", ".json");
        Files.writeString(published, new JWKSet(key.toPublicJWK()).toString());
    }

    /** The settings by which an adapter trusts it. */
    public Map<String, Object> settings() {
        return Map.of(
                "lensward.access.machines.issuer", ISSUER,
                "lensward.access.machines.audience", AUDIENCE,
                "lensward.access.machines.keys", published.toUri().toString());
    }

    /** What a good token says of a program with these roles. */
    public JWTClaimsSet.Builder claims(String... roles) {
        return new JWTClaimsSet.Builder()
                .issuer(ISSUER)
                .audience(AUDIENCE)
                .subject("theatre-system")
                .expirationTime(Date.from(Instant.now().plusSeconds(600)))
                .claim("roles", List.of(roles));
    }

    /** A signed token. */
    public String sign(JWTClaimsSet claims) throws JOSEException {
        return sign(claims, JOSEObjectType.JWT);
    }

    /** Likewise, of a type of its own. */
    public String sign(JWTClaimsSet claims, JOSEObjectType type) throws JOSEException {
        SignedJWT token = new SignedJWT(
                new JWSHeader.Builder(JWSAlgorithm.ES384)
                        .keyID("test")
                        .type(type)
                        .build(),
                claims);
        token.sign(new ECDSASigner(key));
        return token.serialize();
    }

    /** The header of a program that may do all, in whatever person's name it gives. */
    public String bearer() throws JOSEException {
        return "Bearer "
                + sign(claims("surgeon", "nurse", "stock", "integrator").build());
    }
}
