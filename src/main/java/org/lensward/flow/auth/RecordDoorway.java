package org.lensward.flow.auth;

import java.util.Optional;
import javax.net.ssl.SSLContext;

/**
 * What is shown to the record.
 *
 * @param credentials the Authorization header
 * @param tls our certificate and those we trust; Java's own where absent
 */
public record RecordDoorway(Credentials credentials, Optional<SSLContext> tls) {

    /** Open to everyone. */
    public static RecordDoorway open() {
        return new RecordDoorway(Credentials.none(), Optional.empty());
    }
}
