package org.lensward.faults;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Bundles bent on their way, as JSON: HAPI would mend what is to be wrong. */
final class Json {

    private static final ObjectMapper JSON = new ObjectMapper();

    private Json() {}

    static String edit(String bundle, Consumer<ObjectNode> change) {
        try {
            ObjectNode tree = (ObjectNode) JSON.readTree(bundle);
            change.accept(tree);
            return tree.toString();
        } catch (JsonProcessingException unreadable) {
            throw new AssertionError("Not JSON", unreadable);
        }
    }

    /** The searches of a batch's answer that found something. */
    static Stream<ObjectNode> searches(ObjectNode bundle) {
        return bundle.get("entry")
                .valueStream()
                .map(entry -> entry.path("resource"))
                .filter(each -> each.path("entry").size() > 0)
                .map(ObjectNode.class::cast);
    }

    /** The first entry of that type. */
    static ObjectNode entry(ObjectNode bundle, String type) {
        return bundle.get("entry")
                .valueStream()
                .filter(entry ->
                        entry.path("resource").path("resourceType").asText().equals(type))
                .map(JsonNode.class::cast)
                .map(ObjectNode.class::cast)
                .findFirst()
                .orElseThrow();
    }
}
