package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A client that is not ours, node-hl7-client 3.0.0 (MIT, from npm), sends to the running adapter and reads its answers. Its packages
 * come with {@code npm ci} in {@code src/test/interop/hl7}; where they are not there the test is left out, except in CI, where it fails.
 */
class Hl7ClientTest {

    private static final Path CLIENT = Path.of("src/test/interop/hl7");
    private static final ObjectMapper JSON = new ObjectMapper();

    @BeforeEach
    void node_and_the_client_are_here() {
        boolean here = Files.isDirectory(CLIENT.resolve("node_modules/node-hl7-client")) && node();
        if (!here && "true".equals(System.getenv("CI"))) {
            fail("Node and the packages of " + CLIENT + " are wanted here: npm ci");
        }
        Assumptions.assumeTrue(here, "npm ci in " + CLIENT);
    }

    private static boolean node() {
        try {
            return new ProcessBuilder("node", "--version").start().waitFor() == 0;
        } catch (IOException absent) {
            return false;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new AssertionError(interrupted);
        }
    }

    @Test
    void an_independent_client_is_answered_and_what_it_sends_is_stored() throws Exception {
        try (Ward ward = new Ward();
                Adapter adapter = ward.adapter()) {
            assertThat(adapter.record()).isNotNull();
            List<byte[]> messages = new ArrayList<>();
            for (int each = 0; each < 20; each++) {
                messages.add(Messages.length("J" + each, "J-" + each, "QX1077", "23." + (100 + each)));
            }
            messages.add(Messages.booking("S12", "J20", "20261125080000+0000", "A-1"));
            messages.add(Messages.length("J21", "J-21", "NOBODY", "23.5"));
            List<JsonNode> answers = send(ward.port(), messages);
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

    private static List<JsonNode> send(int port, List<byte[]> messages) throws Exception {
        Process client = new ProcessBuilder("node", "send.mjs", String.valueOf(port))
                .directory(CLIENT.toFile())
                .redirectError(new File("target/hl7-client.log"))
                .start();
        try (var in = client.outputWriter(StandardCharsets.UTF_8)) {
            for (byte[] each : messages) {
                in.write(JSON.writeValueAsString(new String(each, StandardCharsets.UTF_8).trim()) + "\n");
            }
        }
        List<JsonNode> answers = new ArrayList<>();
        try (var out = client.inputReader(StandardCharsets.UTF_8)) {
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                answers.add(JSON.readTree(line));
            }
        }
        assertThat(client.waitFor(30, TimeUnit.SECONDS)).isTrue();
        return answers;
    }
}
