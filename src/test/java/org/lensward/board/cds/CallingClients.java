package org.lensward.board.cds;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.JWSSigner;
import com.nimbusds.jose.crypto.ECDSASigner;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.Curve;
import com.nimbusds.jose.jwk.ECKey;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.ECKeyGenerator;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Date;
import java.util.Map;
import java.util.UUID;

/** Two invented clinical systems that may call: one whose keys lie in a file, one that serves them. */
public final class CallingClients {

    static final String BASE = "https://lensward.test";
    static final String WITH_FILE = "https://ward.test/";
    static final String WITH_ADDRESS = "https://clinic.test/";
    static final String ORIGIN = "https://ward.test";

    static final ECKey WARD = ec("ward-1");
    static final RSAKey CLINIC = rsa("clinic-1");
    static final URI CLINIC_KEYS = serve(CLINIC);

    private CallingClients() {}

    /** What the application is told of them. */
    public static Map<String, Object> settings() {
        return Map.of(
                "lensward.cds.base-url", BASE,
                "lensward.cds.origins", ORIGIN,
                "lensward.cds.clients[0].issuer", WITH_FILE,
                "lensward.cds.clients[0].keys", file(WARD).toString(),
                "lensward.cds.clients[1].issuer", WITH_ADDRESS,
                "lensward.cds.clients[1].keys", CLINIC_KEYS.toString());
    }

    /** A token of the ward's for a service, with nothing wrong. */
    static String token(String service) {
        return sign(ecHeader().build(), claims(service).build());
    }

    static JWSHeader.Builder ecHeader() {
        return new JWSHeader.Builder(JWSAlgorithm.ES384).keyID(WARD.getKeyID());
    }

    static JWTClaimsSet.Builder claims(String service) {
        Instant now = Instant.now();
        return new JWTClaimsSet.Builder()
                .issuer(WITH_FILE)
                .audience(BASE + "/cds-services/" + service)
                .issueTime(Date.from(now))
                .expirationTime(Date.from(now.plusSeconds(240)))
                .jwtID(UUID.randomUUID().toString());
    }

    static String sign(JWSHeader header, JWTClaimsSet claims) {
        try {
            return sign(header, claims, new ECDSASigner(WARD));
        } catch (JOSEException impossible) {
            throw new AssertionError(impossible);
        }
    }

    static String signRsa(JWSHeader header, JWTClaimsSet claims) {
        try {
            return sign(header, claims, new RSASSASigner(CLINIC));
        } catch (JOSEException impossible) {
            throw new AssertionError(impossible);
        }
    }

    static String sign(JWSHeader header, JWTClaimsSet claims, JWSSigner signer) {
        try {
            SignedJWT token = new SignedJWT(header, claims);
            token.sign(signer);
            return token.serialize();
        } catch (JOSEException impossible) {
            throw new AssertionError(impossible);
        }
    }

    static ECKey ec(String name) {
        try {
            return new ECKeyGenerator(Curve.P_384).keyID(name).generate();
        } catch (JOSEException impossible) {
            throw new AssertionError(impossible);
        }
    }

    private static RSAKey rsa(String name) {
        try {
            return new RSAKeyGenerator(2048).keyID(name).generate();
        } catch (JOSEException impossible) {
            throw new AssertionError(impossible);
        }
    }

    static URI file(ECKey key) {
        try {
            Path file = Files.createTempFile("keys", ".json");
            Files.writeString(file, new JWKSet(key.toPublicJWK()).toString());
            file.toFile().deleteOnExit();
            return file.toUri();
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    private static URI serve(RSAKey key) {
        try {
            byte[] set = new JWKSet(key.toPublicJWK()).toString().getBytes(StandardCharsets.UTF_8);
            HttpServer server = HttpServer.create(new InetSocketAddress("localhost", 0), 0);
            server.createContext("/keys", exchange -> {
                exchange.getResponseHeaders().set("Content-Type", "application/json");
                exchange.sendResponseHeaders(200, set.length);
                exchange.getResponseBody().write(set);
                exchange.close();
            });
            server.start();
            return URI.create("http://localhost:" + server.getAddress().getPort() + "/keys");
        } catch (IOException unserved) {
            throw new UncheckedIOException(unserved);
        }
    }
}
