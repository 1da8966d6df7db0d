package org.lensward.flow.auth;

import java.util.Optional;
import javax.net.ssl.SSLContext;

/**
 * What is shown to the record.
 *
 * @param credentials the Authorization header
 * @param tls our certificate and those we trust; Java's own where absent
 * @param certificates where the record's certificate is noted
 */
public record RecordDoorway(Credentials credentials, Optional<SSLContext> tls, Certificates certificates) {

    /** Open to everyone. */
    public static RecordDoorway open() {
        return new RecordDoorway(Credentials.none(), Optional.empty(), new Certificates(Optional.empty()));
    }
}
