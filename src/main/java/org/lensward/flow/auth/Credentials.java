package org.lensward.flow.auth;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Optional;

/** What the record, and nobody else, is shown. */
public interface Credentials {

    /**
     * The Authorization header; nothing where none is shown.
     *
     * @throws IOException while what gives it is away
     */
    Optional<String> header() throws IOException;

    /**
     * Whether there is another header to show now that the record refused one.
     *
     * @param refused the header it answered 401 to
     * @throws IOException while what gives it is away
     */
    boolean renew(String refused) throws IOException;

    /** Nothing is shown. */
    static Credentials none() {
        return new Fixed(Optional.empty());
    }

    /** Name and password (RFC 7617). */
    static Credentials basic(AccessSettings.Basic basic) {
        if (basic.name().isEmpty()
                || basic.name().contains(":")
                || basic.password().isEmpty()) {
            throw new IllegalArgumentException(
                    "lensward.record-access.basic needs a name without a colon and a password");
        }
        byte[] pair = (basic.name() + ":" + basic.password().reveal()).getBytes(StandardCharsets.UTF_8);
        return new Fixed(Optional.of("Basic " + Base64.getEncoder().encodeToString(pair)));
    }

    /** The same for as long as the adapter runs. */
    final class Fixed implements Credentials {

        private final Optional<String> header;

        private Fixed(Optional<String> header) {
            this.header = header;
        }

        @Override
        public Optional<String> header() {
            return header;
        }

        @Override
        public boolean renew(String refused) {
            return false;
        }
    }
}
