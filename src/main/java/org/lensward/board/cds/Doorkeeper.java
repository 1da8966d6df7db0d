package org.lensward.board.cds;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.board.BodyLimit;
import org.springframework.http.HttpHeaders;

/** Lets a call in: first who it is from, then how long it is. */
final class Doorkeeper {

    private final CdsSettings settings;
    private final ClientTrust trust;

    Doorkeeper(CdsSettings settings, ClientTrust trust) {
        this.settings = settings;
        this.trust = trust;
    }

    /**
     * A call that may be answered.
     *
     * @param caller the client's issuer
     * @param body as sent
     */
    record Admitted(String caller, byte[] body) {}

    /**
     * Lets a call in.
     *
     * @param addresses what the token may be made out to, each a part after {@code cds-services/}
     */
    Admitted admit(HttpServletRequest request, String... addresses) throws IOException {
        String caller = trust.caller(
                Optional.ofNullable(request.getHeader(HttpHeaders.AUTHORIZATION)),
                Stream.of(addresses).map(settings::endpoint).toList());
        byte[] body = new BodyLimit(settings.bodyLimit()).read(request).orElseThrow(Refusal::tooLong);
        return new Admitted(caller, body);
    }
}
