package org.lensward.board.fhir;

import ca.uhn.fhir.rest.client.exceptions.FhirClientConnectionException;
import ca.uhn.fhir.rest.server.exceptions.BaseServerResponseException;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.flow.RecordRefusal;
import org.lensward.record.UnreadableRecord;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * The operation {@code $plan}: a Bundle, or a booking of the record, in; the transaction that would be posted out. What cannot be
 * answered is an OperationOutcome, never a stack trace.
 */
@RestController
final class PlanOperation {

    private static final Logger LOG = LoggerFactory.getLogger(PlanOperation.class);

    private final FhirExchange exchange;
    private final AskedPlans plans;

    PlanOperation(FhirExchange exchange, AskedPlans plans) {
        this.exchange = exchange;
        this.plans = plans;
    }

    /** Every method and type comes here, so that those not answered are refused as FHIR refuses. */
    @RequestMapping("/fhir/$plan")
    ResponseEntity<byte[]> plan(HttpServletRequest request) throws IOException {
        return exchange.answer(HttpStatus.OK, plans.plan(PlanInput.read(exchange.read(request))));
    }

    @ExceptionHandler
    ResponseEntity<byte[]> refused(FhirRefusal refusal) {
        return exchange.answer(refusal.status(), refusal.outcome());
    }

    @ExceptionHandler
    ResponseEntity<byte[]> unreadable(UnreadableRecord refused) {
        return exchange.answer(HttpStatus.UNPROCESSABLE_ENTITY, refused.outcome());
    }

    @ExceptionHandler
    ResponseEntity<byte[]> away(FhirClientConnectionException away) {
        LOG.warn("The record does not answer: {}", away.getClass().getSimpleName());
        return refused(new FhirRefusal(
                HttpStatus.SERVICE_UNAVAILABLE, IssueType.TRANSIENT, "The record does not answer; try again."));
    }

    @ExceptionHandler({BaseServerResponseException.class, RecordRefusal.class})
    ResponseEntity<byte[]> recordRefuses(RuntimeException refused) {
        LOG.warn("The record refused: {}", refused.getClass().getSimpleName());
        return refused(new FhirRefusal(
                HttpStatus.BAD_GATEWAY, IssueType.TRANSIENT, "The record refuses what was asked of it."));
    }

    @ExceptionHandler
    ResponseEntity<byte[]> fault(RuntimeException fault) {
        LOG.error("A fault in answering $plan", fault);
        return refused(new FhirRefusal(
                HttpStatus.INTERNAL_SERVER_ERROR,
                IssueType.EXCEPTION,
                "A fault in Lensward. The log says why; tell whoever looks after it."));
    }
}
