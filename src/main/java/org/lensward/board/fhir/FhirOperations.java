package org.lensward.board.fhir;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * Our own FHIR endpoint: the operations {@code $plan} and {@code $verify-lens}, and what there is of it. Every method and type comes here,
 * so that those not answered are refused as FHIR refuses.
 */
@RestController
@RequestMapping("/fhir")
final class FhirOperations {

    private final FhirExchange exchange;
    private final RecordAddress record;
    private final AskedPlans plans;
    private final AskedChecks checks;

    FhirOperations(FhirExchange exchange, RecordAddress record, AskedPlans plans, AskedChecks checks) {
        this.exchange = exchange;
        this.record = record;
        this.plans = plans;
        this.checks = checks;
    }

    /** A Bundle, or a booking of the record, in; the transaction that would be posted out. */
    @RequestMapping("/$plan")
    ResponseEntity<byte[]> plan(HttpServletRequest request) throws IOException {
        return exchange.answer(HttpStatus.OK, record.addressed(plans.plan(PlanInput.read(exchange.read(request)))));
    }

    /** What people present at a checkpoint in; whether the lens may go on out. */
    @RequestMapping("/$verify-lens")
    ResponseEntity<byte[]> verify(HttpServletRequest request) throws IOException {
        VerifyInput input = VerifyInput.read(exchange.read(request));
        return exchange.answer(
                HttpStatus.OK, new VerdictParameters(record, input.bundle().isEmpty()).of(checks.verify(input)));
    }

    /** What this endpoint answers. */
    @RequestMapping("/metadata")
    ResponseEntity<byte[]> metadata(HttpServletRequest request) {
        exchange.expect(request, "GET");
        return exchange.answer(HttpStatus.OK, Served.statement());
    }
}
