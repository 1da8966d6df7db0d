package org.lensward.board;

import ca.uhn.fhir.rest.client.exceptions.FhirClientConnectionException;
import ca.uhn.fhir.rest.server.exceptions.BaseServerResponseException;
import ca.uhn.fhir.rest.server.exceptions.InvalidRequestException;
import ca.uhn.fhir.rest.server.exceptions.ResourceNotFoundException;
import ca.uhn.fhir.rest.server.exceptions.ResourceVersionConflictException;
import ca.uhn.fhir.rest.server.exceptions.UnprocessableEntityException;
import com.fasterxml.jackson.databind.JsonMappingException;
import java.net.URI;
import java.util.Objects;
import java.util.stream.Collectors;
import org.lensward.board.access.NotYourName;
import org.lensward.board.api.Found;
import org.lensward.board.api.Refusal;
import org.lensward.record.UnreadableRecord;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;

/** What went wrong, as problem+json (RFC 9457): what, where and what to do; never a stack trace, never a patient's name. */
@RestControllerAdvice
final class Problems extends ResponseEntityExceptionHandler {

    private static final Logger LOG = LoggerFactory.getLogger(Problems.class);

    private static final String TYPES = "https://lensward.org/problems/";

    @ExceptionHandler
    ProblemDetail refused(Refusal refusal) {
        ProblemDetail problem = problem(
                refusal.status(),
                refusal.type(),
                String.valueOf(refusal.getMessage()),
                refusal.findings().get(0).message());
        problem.setProperty(
                "findings", refusal.findings().stream().map(Found::of).toList());
        return problem;
    }

    @ExceptionHandler
    ProblemDetail unreadable(UnreadableRecord refused) {
        HttpStatus status =
                switch (refused.type()) {
                    case NOTFOUND -> HttpStatus.NOT_FOUND;
                    case CONFLICT -> HttpStatus.CONFLICT;
                    case REQUIRED, VALUE -> HttpStatus.BAD_REQUEST;
                    default -> HttpStatus.UNPROCESSABLE_ENTITY;
                };
        ProblemDetail problem =
                problem(status, "not-readable", "It cannot be read", String.valueOf(refused.getMessage()));
        problem.setProperty("element", refused.element());
        return problem;
    }

    @ExceptionHandler
    ProblemDetail another(NotYourName refused) {
        return problem(HttpStatus.FORBIDDEN, "not-your-name", "Not your name", String.valueOf(refused.getMessage()));
    }

    @ExceptionHandler
    ProblemDetail moved(ResourceVersionConflictException conflict) {
        LOG.debug("Conflict", conflict);
        return problem(
                HttpStatus.CONFLICT,
                "changed-meanwhile",
                "Someone else was first",
                "What you changed was changed by someone else meanwhile. Nothing was written; look again.");
    }

    @ExceptionHandler
    ProblemDetail missing(ResourceNotFoundException missing) {
        LOG.debug("Missing", missing);
        return problem(
                HttpStatus.NOT_FOUND,
                "not-in-the-record",
                "Not in the record",
                "The record has nothing under that name.");
    }

    @ExceptionHandler
    ProblemDetail away(FhirClientConnectionException away) {
        LOG.warn("The record does not answer: {}", away.getClass().getSimpleName());
        return problem(
                HttpStatus.SERVICE_UNAVAILABLE,
                "record-away",
                "The record does not answer",
                "Nothing was written. Try again; if it stays away, work by the printed plan and local policy.");
    }

    @ExceptionHandler({InvalidRequestException.class, UnprocessableEntityException.class})
    ProblemDetail unacceptable(BaseServerResponseException refused) {
        LOG.warn("The record does not accept what would be written: HTTP {}", refused.getStatusCode());
        return problem(
                HttpStatus.UNPROCESSABLE_ENTITY,
                "record-does-not-accept",
                "The record does not accept it",
                "Nothing was written. Look whether every person, place and owner that is named by reference is in the record;"
                        + " a plain name will do, too.");
    }

    @ExceptionHandler
    ProblemDetail refused(BaseServerResponseException refused) {
        LOG.warn("The record refused: HTTP {}", refused.getStatusCode());
        return problem(
                HttpStatus.BAD_GATEWAY,
                "record-refuses",
                "The record refuses",
                "The record answered " + refused.getStatusCode() + ". Nothing was written.");
    }

    @ExceptionHandler
    ProblemDetail fault(RuntimeException fault) {
        LOG.error("A fault in answering a request", fault);
        return problem(
                HttpStatus.INTERNAL_SERVER_ERROR,
                "fault",
                "A fault in Lensward",
                "The request could not be answered. The log says why; tell whoever looks after Lensward.");
    }

    /** Names the field that is missing, unknown or not what it must be. */
    @Override
    protected ResponseEntity<Object> handleHttpMessageNotReadable(
            HttpMessageNotReadableException unreadable,
            HttpHeaders headers,
            HttpStatusCode status,
            WebRequest request) {
        String where = unreadable.getCause() instanceof JsonMappingException wrong
                ? wrong.getPath().stream()
                        .map(JsonMappingException.Reference::getFieldName)
                        .filter(Objects::nonNull)
                        .collect(Collectors.joining("."))
                : "";
        String detail = where.isEmpty()
                ? "The request is not the JSON that is asked for; /api/openapi describes it."
                : "The field " + where + " is missing, unknown or not what it must be; /api/openapi describes it.";
        ProblemDetail problem =
                problem(HttpStatus.BAD_REQUEST, "malformed-request", "The request cannot be read", detail);
        return ResponseEntity.badRequest().body(problem);
    }

    private static ProblemDetail problem(HttpStatus status, String type, String title, String detail) {
        ProblemDetail problem = ProblemDetail.forStatusAndDetail(status, detail);
        problem.setType(URI.create(TYPES + type));
        problem.setTitle(title);
        return problem;
    }
}
