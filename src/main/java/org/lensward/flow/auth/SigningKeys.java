package org.lensward.flow.auth;

import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.jwk.Curve;
import com.nimbusds.jose.jwk.ECKey;
import com.nimbusds.jose.jwk.JWK;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.ParseException;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.lensward.finding.FindingCode;
import org.lensward.flow.RecordRefusal;

/**
 * Our private keys as JWK files (RFC 7517), read anew each time, so that a key is changed without a restart: put the new one beside the
 * old one, let the record learn its public half, and take the old one away later. The newest key that is valid signs.
 */
public final class SigningKeys {

    private static final int LEAST_RSA_BITS = 2048;

    private final Path where;
    private final Clock clock;

    /**
     * Keys in files.
     *
     * @param where a folder of {@code *.jwk}, or one file
     * @param clock by which {@code nbf} and {@code exp} are judged
     */
    public SigningKeys(Path where, Clock clock) {
        this.where = where;
        this.clock = clock;
    }

    /** The public halves of all that have not ended, those of later days too. */
    public JWKSet published() {
        Date now = Date.from(clock.instant());
        return new JWKSet(keys().stream()
                .filter(key -> lasts(key, now))
                .map(JWK::toPublicJWK)
                .toList());
    }

    /**
     * The key to sign with.
     *
     * @param taken the algorithms that the other side takes
     */
    JWK newest(Set<JWSAlgorithm> taken) {
        Date now = Date.from(clock.instant());
        return keys().stream()
                .filter(key -> lasts(key, now) && !begins(key).after(now))
                .filter(key -> taken.contains(algorithm(key)))
                .max(Comparator.comparing(SigningKeys::begins).thenComparing(JWK::getKeyID))
                .orElseThrow(() -> new RecordRefusal(
                        FindingCode.RECORD_KEY_MISSING, where.toString(), where.getFileName(), taken));
    }

    /** ES384 for keys on P-384, RS384 for RSA, as SMART's "Client authentication: asymmetric" asks servers to take. */
    static JWSAlgorithm algorithm(JWK key) {
        return key instanceof ECKey ? JWSAlgorithm.ES384 : JWSAlgorithm.RS384;
    }

    private static boolean lasts(JWK key, Date now) {
        return key.getExpirationTime() == null || key.getExpirationTime().after(now);
    }

    private static Date begins(JWK key) {
        return Optional.ofNullable(key.getNotBeforeTime())
                .or(() -> Optional.ofNullable(key.getIssueTime()))
                .orElse(Date.from(Instant.EPOCH));
    }

    private List<JWK> keys() {
        try (Stream<Path> files = Files.isDirectory(where) ? Files.list(where) : Stream.of(where)) {
            return files.filter(file -> file.toString().endsWith(".jwk"))
                    .sorted()
                    .map(SigningKeys::key)
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException("The keys in " + where + " cannot be read", unreadable);
        }
    }

    /** The parser's own words would show the key. */
    private static JWK key(Path file) {
        try {
            JWK key = JWK.parse(Files.readString(file));
            if (key.getKeyID() == null || !key.isPrivate() || !isStrong(key)) {
                throw new IllegalArgumentException("The key in " + file.getFileName()
                        + " must be private, have a kid, and be on P-384 or RSA of at least " + LEAST_RSA_BITS
                        + " bits");
            }
            return key;
        } catch (ParseException wrong) {
            throw new IllegalArgumentException("The file " + file.getFileName() + " holds no JWK");
        } catch (IOException unreadable) {
            throw new UncheckedIOException("The key in " + file + " cannot be read", unreadable);
        }
    }

    private static boolean isStrong(JWK key) {
        return key instanceof ECKey curve && curve.getCurve().equals(Curve.P_384)
                || key instanceof RSAKey rsa && rsa.size() >= LEAST_RSA_BITS;
    }
}
