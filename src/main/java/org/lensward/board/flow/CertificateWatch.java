package org.lensward.board.flow;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.security.GeneralSecurityException;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLEngine;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.TrustManager;
import javax.net.ssl.X509ExtendedTrustManager;
import org.jspecify.annotations.Nullable;

/**
 * Until when the certificates of a server are valid: the earliest of its chain, read by greeting it, trusted or not, since an untrusted one's
 * date is worth knowing, too. Nothing is asked or sent. Looked at once an hour.
 */
public final class CertificateWatch {

    private static final Duration KEPT = Duration.ofHours(1);
    private static final int PATIENCE = 3_000;
    private static final int HTTPS = 443;

    private final Clock clock;
    private final Map<URI, Seen> seen = new ConcurrentHashMap<>();

    public CertificateWatch(Clock clock) {
        this.clock = clock;
    }

    /**
     * What a server showed.
     *
     * @param until the last moment at which all of its chain is valid; empty where none was shown
     * @param at when it was looked at
     */
    private record Seen(Optional<Instant> until, Instant at) {}

    /** Whole days left; negative once over; empty without TLS or where the server does not answer. */
    public Optional<Long> daysLeft(URI server) {
        if (!"https".equals(server.getScheme())) {
            return Optional.empty();
        }
        Instant now = clock.instant();
        return seen.compute(server, (any, before) -> isFresh(before, now) ? before : new Seen(look(server), now))
                .until()
                .map(until -> Math.floorDiv(
                        Duration.between(now, until).toSeconds(),
                        Duration.ofDays(1).toSeconds()));
    }

    private static boolean isFresh(@Nullable Seen before, Instant now) {
        return before != null
                && before.until().isPresent()
                && before.at().plus(KEPT).isAfter(now);
    }

    private static Optional<Instant> look(URI server) {
        int port = server.getPort() < 0 ? HTTPS : server.getPort();
        try (Socket plain = new Socket()) {
            plain.connect(new InetSocketAddress(server.getHost(), port), PATIENCE);
            plain.setSoTimeout(PATIENCE);
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(null, new TrustManager[] {new Reader()}, null);
            try (SSLSocket socket =
                    (SSLSocket) context.getSocketFactory().createSocket(plain, server.getHost(), port, true)) {
                socket.startHandshake();
                return earliest(socket.getSession().getPeerCertificates());
            }
        } catch (IOException | GeneralSecurityException silent) {
            return Optional.empty(); // that the record does not answer is told elsewhere
        }
    }

    private static Optional<Instant> earliest(Certificate[] chain) {
        return Stream.of(chain)
                .filter(X509Certificate.class::isInstance)
                .map(each -> ((X509Certificate) each).getNotAfter().toInstant())
                .min(Comparator.naturalOrder());
    }

    /** Reads dates of any chain; never used for a connection over which anything is said. */
    private static final class Reader extends X509ExtendedTrustManager {

        @Override
        public void checkClientTrusted(X509Certificate[] chain, String type) {}

        @Override
        public void checkServerTrusted(X509Certificate[] chain, String type) {}

        @Override
        public void checkClientTrusted(X509Certificate[] chain, String type, Socket socket) {}

        @Override
        public void checkServerTrusted(X509Certificate[] chain, String type, Socket socket) {}

        @Override
        public void checkClientTrusted(X509Certificate[] chain, String type, SSLEngine engine) {}

        @Override
        public void checkServerTrusted(X509Certificate[] chain, String type, SSLEngine engine) {}

        @Override
        public X509Certificate[] getAcceptedIssuers() {
            return new X509Certificate[0];
        }
    }
}
