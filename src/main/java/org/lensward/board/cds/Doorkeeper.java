package org.lensward.board.cds;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
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

    /** Lets a call of a service in, or a word about it: the token is made out to the service, or to its feedback. */
    Admitted admit(HttpServletRequest request, String service) throws IOException {
        String endpoint = settings.endpoint(service);
        String caller = trust.caller(
                Optional.ofNullable(request.getHeader(HttpHeaders.AUTHORIZATION)),
                request.getRequestURI().endsWith("/feedback")
                        ? List.of(endpoint, endpoint + "/feedback")
                        : List.of(endpoint));
        byte[] body = new BodyLimit(settings.bodyLimit()).read(request).orElseThrow(Refusal::tooLong);
        return new Admitted(caller, body);
    }
}
