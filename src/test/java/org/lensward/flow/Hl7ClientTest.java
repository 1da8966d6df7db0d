package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.Test;
import org.lensward.NodeClient;

/**
 * A client that is not ours, node-hl7-client 3.0.0 (MIT, from npm), sends to the running adapter and reads its answers. Its packages
 * come with {@code npm ci} in {@code src/test/interop/hl7}; where they are not there the test is left out, except in CI, where it fails.
 */
class Hl7ClientTest {

    private static final ObjectMapper JSON = new ObjectMapper();

    @Test
    void an_independent_client_is_answered_and_what_it_sends_is_stored() throws Exception {
        NodeClient client = NodeClient.in("hl7", "node-hl7-client");
        try (Ward ward = new Ward();
                Adapter adapter = ward.adapter()) {
            assertThat(adapter.record()).isNotNull();
            List<byte[]> messages = new ArrayList<>();
            for (int each = 0; each < 20; each++) {
                messages.add(Messages.length("J" + each, "J-" + each, "QX1077", "23." + (100 + each)));
            }
            messages.add(Messages.booking("S12", "J20", "20261125080000+0000", "A-1"));
            messages.add(Messages.length("J21", "J-21", "NOBODY", "23.5"));
            List<JsonNode> answers = send(client, ward.port(), messages);
            assertThat(answers).hasSize(22);
            assertThat(answers.subList(0, 21))
                    .allMatch(each -> each.get("code").asText().equals("AA"));
            assertThat(answers.get(21).get("code").asText()).isEqualTo("AE");
            assertThat(answers.get(3).get("control").asText()).isEqualTo("J3");
            assertThat(answers.get(3).get("type").asText()).isEqualTo("ACK");
            assertThat(answers.get(3).get("version").asText()).isEqualTo("2.5");
            assertThat(ward.all(Observation.class)).hasSize(20);
            assertThat(ward.all(ServiceRequest.class)).hasSize(1);
        }
    }

    private static List<JsonNode> send(NodeClient client, int port, List<byte[]> messages) throws Exception {
        List<String> lines = new ArrayList<>();
        for (byte[] each : messages) {
            lines.add(JSON.writeValueAsString(new String(each, StandardCharsets.UTF_8).trim()));
        }
        return client.run(lines, "send.mjs", String.valueOf(port));
    }
}
