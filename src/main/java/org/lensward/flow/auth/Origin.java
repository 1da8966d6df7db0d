package org.lensward.flow.auth;

import java.net.URI;
import java.util.Locale;
import java.util.Set;

/**
 * Who answers at an address (RFC 6454): scheme, host and port, and the path that was named.
 *
 * @param scheme {@code https} or {@code http}
 * @param host lower case
 * @param port never left to the scheme
 * @param path without a slash at its end
 */
record Origin(String scheme, String host, int port, String path) {

    private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "[::1]");

    static Origin of(URI url) {
        if (url.getScheme() == null || url.getHost() == null) {
            throw new IllegalArgumentException("Not a whole address: " + url);
        }
        String scheme = url.getScheme().toLowerCase(Locale.ROOT);
        int port = url.getPort() >= 0 ? url.getPort() : scheme.equals("https") ? 443 : 80;
        String path = url.getPath() == null ? "" : url.getPath().replaceAll("/+$", "");
        return new Origin(scheme, url.getHost().toLowerCase(Locale.ROOT), port, path);
    }

    /** Whether who answers there is the same, by scheme, host and port. */
    boolean isSame(URI other) {
        if (other.getScheme() == null || other.getHost() == null) {
            return false;
        }
        Origin their = of(other);
        return scheme.equals(their.scheme) && host.equals(their.host) && port == their.port;
    }

    /** Whether what is said there cannot be heard on the way. */
    boolean isGuarded() {
        return scheme.equals("https") || THIS_MACHINE.contains(host);
    }

    URI below(String further) {
        return URI.create(scheme + "://" + host + ":" + port + path + further);
    }
}
