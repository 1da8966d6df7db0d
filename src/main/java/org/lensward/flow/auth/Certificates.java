package org.lensward.flow.auth;

import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/** When certificates end: ours, and the record's as it showed it last. */
public final class Certificates {

    private final Optional<KeyStore> ours;
    private volatile Optional<Instant> ofRecord = Optional.empty();

    Certificates(Optional<KeyStore> ours) {
        this.ours = ours;
    }

    /** The end of ours, of several the first. */
    public Optional<Instant> own() {
        return ours.flatMap(Certificates::firstEnd);
    }

    /** The end of the one that the record showed last. */
    public Optional<Instant> ofRecord() {
        return ofRecord;
    }

    void shown(Certificate[] chain) {
        ofRecord = end(Arrays.stream(chain).limit(1));
    }

    private static Optional<Instant> firstEnd(KeyStore store) {
        try {
            Stream.Builder<Certificate> all = Stream.builder();
            for (String alias : Collections.list(store.aliases())) {
                if (store.isKeyEntry(alias)) {
                    all.add(store.getCertificate(alias));
                }
            }
            return end(all.build());
        } catch (GeneralSecurityException unloaded) {
            throw new IllegalStateException("The key store was not loaded", unloaded);
        }
    }

    private static Optional<Instant> end(Stream<Certificate> certificates) {
        return certificates
                .filter(X509Certificate.class::isInstance)
                .map(each -> ((X509Certificate) each).getNotAfter().toInstant())
                .min(Comparator.naturalOrder());
    }
}
