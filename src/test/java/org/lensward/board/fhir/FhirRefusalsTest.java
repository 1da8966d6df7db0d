package org.lensward.board.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.rest.client.exceptions.FhirClientConnectionException;
import ca.uhn.fhir.rest.server.exceptions.AuthenticationException;
import ca.uhn.fhir.rest.server.exceptions.InternalErrorException;
import ca.uhn.fhir.rest.server.exceptions.ResourceVersionConflictException;
import ca.uhn.fhir.rest.server.exceptions.UnprocessableEntityException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.junit.jupiter.api.Test;
import org.lensward.board.BodyLimit;
import org.lensward.record.Fhir;
import org.lensward.record.UnreadableRecord;
import org.springframework.http.ResponseEntity;
import org.springframework.util.unit.DataSize;

/** What the record does to a caller: statuses by RFC 9110, 15.5 and 15.6; the issue types are FHIR's. */
class FhirRefusalsTest {

    private final FhirRefusals refusals =
            new FhirRefusals(new FhirExchange(Fhir.r4(), new BodyLimit(DataSize.ofKilobytes(1))));

    @Test
    void each_fault_of_the_record_has_its_status_and_says_nothing_of_the_inside() {
        List<Map.Entry<ResponseEntity<byte[]>, Integer>> answers = List.of(
                Map.entry(refusals.away(new FhirClientConnectionException("http://10.0.0.1/secret")), 503),
                Map.entry(refusals.recordRefuses(new InternalErrorException("secret")), 502),
                Map.entry(refusals.recordRefuses(new AuthenticationException("secret")), 502),
                Map.entry(refusals.unacceptable(new UnprocessableEntityException("secret")), 422),
                Map.entry(refusals.overtaken(new ResourceVersionConflictException("secret")), 409),
                Map.entry(
                        refusals.unreadable(new UnreadableRecord(IssueType.CONFLICT, "ServiceRequest/b1", "Changed.")),
                        409),
                Map.entry(
                        refusals.unreadable(
                                new UnreadableRecord(IssueType.NOTFOUND, "ServiceRequest/b1.subject", "None.")),
                        422),
                Map.entry(refusals.fault(new IllegalStateException("secret")), 500));
        answers.forEach(each -> {
            ResponseEntity<byte[]> answer = each.getKey();
            int status = each.getValue();
            String body = new String(answer.getBody(), StandardCharsets.UTF_8);
            assertThat(answer.getStatusCode().value()).as(body).isEqualTo(status);
            assertThat(Fhir.r4()
                            .newJsonParser()
                            .parseResource(OperationOutcome.class, body)
                            .getIssue())
                    .isNotEmpty();
            assertThat(body).doesNotContain("secret", "10.0.0.1");
        });
    }
}
