package org.lensward.board.cds;

import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponseException;

/** A call that is not answered with cards, and why. Repeats nothing of what was sent. */
final class Refusal extends ErrorResponseException {

    private static final long serialVersionUID = 1;

    private Refusal(HttpStatus status, String why) {
        super(status, ProblemDetail.forStatusAndDetail(status, why), null);
    }

    /** The call is not as CDS Hooks has it. */
    static Refusal malformed(String why) {
        return new Refusal(HttpStatus.BAD_REQUEST, why);
    }

    /** The caller is not known to be who may call. */
    static Refusal untrusted(String why) {
        Refusal refusal = new Refusal(HttpStatus.UNAUTHORIZED, why);
        refusal.getHeaders().set(HttpHeaders.WWW_AUTHENTICATE, "Bearer");
        return refusal;
    }

    static Refusal unknownService() {
        return new Refusal(HttpStatus.NOT_FOUND, "There is no such service; /cds-services lists those there are.");
    }

    /** What the service needs was neither sent nor could be read from the record (CDS Hooks 2.0, HTTP status codes). */
    static Refusal withoutData(String why) {
        return new Refusal(HttpStatus.PRECONDITION_FAILED, why);
    }

    static Refusal tooLong() {
        return new Refusal(HttpStatus.PAYLOAD_TOO_LARGE, "The request is longer than lensward.cds.body-limit.");
    }

    /** The caller's keys cannot be had now. */
    static Refusal withoutKeys() {
        return new Refusal(HttpStatus.SERVICE_UNAVAILABLE, "The client's public keys cannot be read now.");
    }
}
