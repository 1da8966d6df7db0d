package org.lensward.record.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.AuditEvent;
import org.hl7.fhir.r4.model.AuditEvent.AuditEventOutcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.record.ProfileValidator;

/** AuditEvents as HL7's validator and IHE's Basic Audit Log Patterns want them. */
class AuditEventsTest {

    private static final Deed DEED = new Deed(
            Instant.parse("2026-12-10T08:00:00Z"),
            "Ms Vale",
            List.of("surgeon"),
            Optional.of("192.0.2.7"),
            "POST /eye/{booking}/confirmation",
            List.of("ServiceRequest/booking-01"),
            Deed.Result.DONE);

    @Test
    void one_is_valid_r4() {
        assertThat(ProfileValidator.errors(AuditEvents.of(DEED))).isEmpty();
    }

    /** IHE BALP: exactly one agent is the requestor; a source, an outcome, and what it concerned. */
    @Test
    void it_says_who_asked_what_of_what_and_how_it_ended() {
        AuditEvent event = AuditEvents.of(DEED);
        assertThat(event.getAgent()).filteredOn(each -> each.getRequestor()).hasSize(1);
        assertThat(event.getAgentFirstRep().getNetwork().getAddress()).isEqualTo("192.0.2.7");
        assertThat(event.getRecorded()).isEqualTo(DEED.at());
        assertThat(event.getEntityFirstRep().getWhat().getReference()).isEqualTo("ServiceRequest/booking-01");
        assertThat(event.getOutcome()).isEqualTo(AuditEventOutcome._0);
    }

    @ParameterizedTest
    @CsvSource({"200, DONE", "302, DONE", "403, REFUSED", "409, REFUSED", "502, FAILED"})
    void how_it_ended_follows_the_answer(int status, Deed.Result result) {
        assertThat(Deed.Result.of(status)).isEqualTo(result);
    }
}
