package org.lensward.flow.auth;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.jwk.Curve;
import com.nimbusds.jose.jwk.JWK;
import com.nimbusds.jose.jwk.gen.ECKeyGenerator;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Date;

/** Key files made for one test. */
final class Keys {

    static final Instant NOW = Instant.parse("2026-11-25T08:00:00Z");

    private Keys() {}

    static JWK elliptic(String id, String from, String until) throws JOSEException {
        return new ECKeyGenerator(Curve.P_384)
                .keyID(id)
                .notBeforeTime(Date.from(Instant.parse(from)))
                .expirationTime(Date.from(Instant.parse(until)))
                .generate();
    }

    static JWK rsa(String id, String from, String until) throws JOSEException {
        return new RSAKeyGenerator(2048)
                .keyID(id)
                .notBeforeTime(Date.from(Instant.parse(from)))
                .expirationTime(Date.from(Instant.parse(until)))
                .generate();
    }

    static JWK put(Path folder, JWK key) throws IOException {
        Files.writeString(folder.resolve(key.getKeyID() + ".jwk"), key.toJSONString());
        return key;
    }
}
