package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.Test;

/** The record is really gone, and only the adapter still answers. */
class RecordAwayTest {

    @Test
    void a_message_is_AE_and_to_be_sent_again() throws IOException {
        Ward ward = new Ward();
        try (Adapter adapter = ward.with(
                                "lensward.record.timeout", Duration.ofSeconds(2).toString())
                        .adapter();
                MllpClient sender = new MllpClient(ward.port())) {
            assertThat(adapter.record()).isNotNull();
            assertThat(sender.ask(Messages.booking("S12", "B1", "20261125080000+0000", "A-1")))
                    .contains("MSA|AA|B1");
            assertThat(ward.all(ServiceRequest.class)).hasSize(1);
            ward.close();
            assertThat(sender.ask(Messages.length("C1", "F-1", "QX1077", "23.11")))
                    .contains("MSA|AE|C1|The record cannot take it now: send it again.");
        }
    }
}
