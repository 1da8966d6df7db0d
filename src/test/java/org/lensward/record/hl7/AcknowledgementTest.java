package org.lensward.record.hl7;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.util.Terser;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.finding.FindingCode;
import org.lensward.record.incoming.RefusedInput;

/** Answers are read back with HAPI's own parser and model of HL7 2.5 (a general library). Codes: HL7 2.5 tables 0008, 0357. */
class AcknowledgementTest {

    private static final Instant NOW = Instant.parse("2026-11-25T09:30:00Z");
    private static final String MESSAGE =
            "MSH|^~\\&|BIOMETER|EYES|LENSWARD|THEATRE|20261125||ORU^R01^ORU_R01|C&1|P|2.5\rPID|1";

    private static Terser answer(Acknowledgement acknowledgement, String message) throws Exception {
        byte[] bytes = acknowledgement.to(message.getBytes(StandardCharsets.UTF_8), NOW);
        Message parsed = new DefaultHapiContext().getPipeParser().parse(new String(bytes, StandardCharsets.ISO_8859_1));
        return new Terser(parsed);
    }

    @Test
    void goes_back_to_the_sender_with_its_control_id() throws Exception {
        Terser answer = answer(Acknowledgement.accepted(), MESSAGE);
        assertThat(answer.get("/MSH-3")).isEqualTo("LENSWARD");
        assertThat(answer.get("/MSH-6")).isEqualTo("EYES");
        assertThat(answer.get("/MSH-9-1") + answer.get("/MSH-9-2") + answer.get("/MSH-9-3"))
                .isEqualTo("ACKR01ACK");
        assertThat(answer.get("/MSA-1")).isEqualTo("AA");
        assertThat(answer.get("/MSA-2")).startsWith("C");
    }

    @ParameterizedTest
    @CsvSource({
        "MESSAGE_NOT_ACCEPTED, MSH(1)-9, AR, 200",
        "MESSAGE_NOT_ACCEPTED, MSH(1)-12, AR, 203",
        "MESSAGE_NOT_ACCEPTED, MSH(1)-11, AR, 202",
        "MESSAGE_UNREADABLE, OBX(2)-5, AR, 102",
        "MESSAGE_FIELD_MISSING, OBX(2)-11, AE, 101",
        "MESSAGE_WITHOUT_EYE, OBX(2), AE, 101",
        "MESSAGE_EYE_UNREADABLE, OBX(2)-20, AE, 103",
        "MESSAGE_EYES_CONFLICT, OBX(2), AE, 207",
        "PATIENT_NOT_IN_RECORD, PID(1)-3, AE, 204",
        "PATIENT_AMBIGUOUS, PID(1)-3, AE, 207",
        "PATIENT_CONTRADICTED, PID(1)-3, AE, 207"
    })
    void says_what_is_wrong_where_and_what_to_do(FindingCode code, String place, String ack, String error)
            throws Exception {
        Terser answer = answer(Acknowledgement.refused(new RefusedInput(code, place, "this", "that")), MESSAGE);
        assertThat(answer.get("/MSA-1")).isEqualTo(ack);
        assertThat(answer.get("/ERR-3-1")).isEqualTo(error);
        assertThat(answer.get("/ERR-4-1")).isEqualTo("E");
        assertThat(answer.get("/ERR-8")).endsWith(code.remedy());
        if (place.contains("-")) {
            assertThat(answer.get("/ERR-2-1")).isEqualTo(place.substring(0, 3));
            assertThat(answer.get("/ERR-2-3")).isEqualTo(place.substring(place.indexOf('-') + 1));
        }
    }

    @Test
    void to_what_is_no_message_is_still_a_message() throws Exception {
        for (String garbage : new String[] {"", "GET /", "MSH|", "MSH|^~\\&"}) {
            Terser answer = answer(
                    Acknowledgement.refused(new RefusedInput(FindingCode.MESSAGE_UNREADABLE, "MSH", "MSH", "x")),
                    garbage);
            assertThat(answer.get("/MSA-1")).isEqualTo("AR");
        }
    }

    @Test
    void asks_for_it_again_while_the_record_is_away() throws Exception {
        assertThat(answer(Acknowledgement.later(), MESSAGE).get("/MSA-3")).contains("send it again");
        assertThat(answer(Acknowledgement.failed(), MESSAGE).get("/MSA-1")).isEqualTo("AE");
    }
}
