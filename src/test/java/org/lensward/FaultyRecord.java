package org.lensward;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.lensward.record.JsonEdit;

/**
 * A record to plan from with something wrong in it.
 *
 * @param file a Bundle
 * @param faults what is changed in it, in order
 */
record FaultyRecord(Path file, List<Fault> faults) {

    private static final ObjectMapper JSON = new ObjectMapper();

    /**
     * One thing wrong.
     *
     * @param resource such as {@code Observation/al-1}; {@code +} for a further resource
     * @param edit what is wrong in it
     */
    record Fault(String resource, JsonEdit edit) {}

    /** The Bundle with everything wrong done to it. */
    String json() throws IOException {
        JsonNode bundle = JSON.readTree(Files.readString(file));
        for (Fault fault : faults) {
            if (fault.resource().equals("+")) {
                ((ArrayNode) bundle.get("entry"))
                        .addObject()
                        .set("resource", JSON.readTree(fault.edit().value()));
            } else {
                fault.edit().apply(resource(bundle, fault.resource()));
            }
        }
        return bundle.toString();
    }

    /** The record as the real command plans it. */
    Terminal planned() throws IOException {
        return Terminal.runWith(json(), "plan", "-");
    }

    private static JsonNode resource(JsonNode bundle, String name) {
        return bundle.get("entry")
                .valueStream()
                .map(entry -> entry.get("resource"))
                .filter(each -> name.equals(
                        each.get("resourceType").asText() + "/" + each.get("id").asText()))
                .findFirst()
                .orElseThrow(() -> new AssertionError("No " + name));
    }
}
