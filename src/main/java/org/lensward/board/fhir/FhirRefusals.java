package org.lensward.board.fhir;

import ca.uhn.fhir.rest.client.exceptions.FhirClientConnectionException;
import ca.uhn.fhir.rest.server.exceptions.BaseServerResponseException;
import ca.uhn.fhir.rest.server.exceptions.InvalidRequestException;
import ca.uhn.fhir.rest.server.exceptions.ResourceVersionConflictException;
import ca.uhn.fhir.rest.server.exceptions.UnprocessableEntityException;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.flow.RecordRefusal;
import org.lensward.record.UnreadableRecord;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;

/** What an operation cannot answer, as an OperationOutcome; never a stack trace, never a patient's name. */
@Order(Ordered.HIGHEST_PRECEDENCE)
@RestControllerAdvice(assignableTypes = FhirOperations.class)
final class FhirRefusals {

    private static final Logger LOG = LoggerFactory.getLogger(FhirRefusals.class);

    private final FhirExchange exchange;

    FhirRefusals(FhirExchange exchange) {
        this.exchange = exchange;
    }

    @ExceptionHandler
    ResponseEntity<byte[]> refused(FhirRefusal refusal) {
        return exchange.answer(refusal.status(), refusal.outcome());
    }

    @ExceptionHandler
    ResponseEntity<byte[]> unreadable(UnreadableRecord refused) {
        HttpStatus status =
                refused.type() == IssueType.CONFLICT ? HttpStatus.CONFLICT : HttpStatus.UNPROCESSABLE_ENTITY;
        return exchange.answer(status, refused.outcome());
    }

    @ExceptionHandler
    ResponseEntity<byte[]> overtaken(ResourceVersionConflictException conflict) {
        LOG.debug("Conflict", conflict);
        return refused(new FhirRefusal(
                HttpStatus.CONFLICT,
                IssueType.CONFLICT,
                "What would be changed was changed by someone else meanwhile; look again."));
    }

    @ExceptionHandler
    ResponseEntity<byte[]> away(FhirClientConnectionException away) {
        LOG.warn("The record does not answer: {}", away.getClass().getSimpleName());
        return refused(new FhirRefusal(
                HttpStatus.SERVICE_UNAVAILABLE, IssueType.TRANSIENT, "The record does not answer; try again."));
    }

    @ExceptionHandler({InvalidRequestException.class, UnprocessableEntityException.class})
    ResponseEntity<byte[]> unacceptable(BaseServerResponseException refused) {
        LOG.warn("The record does not accept what would be written: HTTP {}", refused.getStatusCode());
        return refused(new FhirRefusal(
                HttpStatus.UNPROCESSABLE_ENTITY,
                IssueType.PROCESSING,
                "The record does not accept it; look whether every person and place that is named by reference is in the"
                        + " record. A plain name will do, too."));
    }

    @ExceptionHandler({BaseServerResponseException.class, RecordRefusal.class})
    ResponseEntity<byte[]> recordRefuses(RuntimeException refused) {
        LOG.warn("The record refused: {}", refused.getClass().getSimpleName());
        return refused(new FhirRefusal(
                HttpStatus.BAD_GATEWAY, IssueType.TRANSIENT, "The record refuses what was asked of it."));
    }

    @ExceptionHandler
    ResponseEntity<byte[]> fault(RuntimeException fault) {
        LOG.error("A fault in answering a FHIR operation", fault);
        return refused(new FhirRefusal(
                HttpStatus.INTERNAL_SERVER_ERROR,
                IssueType.EXCEPTION,
                "A fault in Lensward. The log says why; tell whoever looks after it."));
    }
}
