package org.lensward.board.cds;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * One call of a service (CDS Hooks 2.0, calling a CDS service), as far as we read it.
 *
 * @param hook which hook
 * @param instance the call's own id
 * @param server the base address of the client's FHIR server, if it says
 * @param context what the hook carries
 * @param prefetch what was sent along, by key; empty where the client looked and found nothing
 */
record HookCall(
        String hook,
        String instance,
        Optional<URI> server,
        JsonNode context,
        Map<String, Optional<JsonNode>> prefetch) {

    /** An id as FHIR R4 has it; nothing else becomes part of a question to the record. */
    private static final Pattern ID = Pattern.compile("[A-Za-z0-9\\-.]{1,64}");

    /** Reads a call; refuses one that lacks what CDS Hooks requires. */
    static HookCall read(ObjectMapper json, byte[] body) {
        JsonNode call = tree(json, body);
        JsonNode context = call.path("context");
        if (!context.isObject()) {
            throw Refusal.malformed("The call has no context.");
        }
        HookCall read = new HookCall(
                required(call, "hook"), required(call, "hookInstance"), server(call), context, prefetch(call));
        if (!ID.matcher(read.patientId()).matches()) {
            throw Refusal.malformed("context.patientId is no FHIR id.");
        }
        return read;
    }

    static JsonNode tree(ObjectMapper json, byte[] body) {
        try {
            JsonNode tree = json.readTree(body);
            if (tree.isObject()) {
                return tree;
            }
        } catch (IOException notJson) {
            throw Refusal.malformed("The body is not JSON.");
        }
        throw Refusal.malformed("The body is not a JSON object.");
    }

    /** The patient in front of the user. */
    String patientId() {
        return required(context, "patientId");
    }

    /** What the hook carries under that name. */
    JsonNode carried(String name) {
        JsonNode carried = context.path(name);
        if (!carried.isObject()) {
            throw Refusal.malformed("context." + name + " is missing.");
        }
        return carried;
    }

    static String required(JsonNode node, String name) {
        String text = node.path(name).asText("");
        if (text.isBlank()) {
            throw Refusal.malformed(name + " is missing.");
        }
        return text;
    }

    private static Optional<URI> server(JsonNode call) {
        try {
            return Optional.of(call.path("fhirServer").asText(""))
                    .filter(text -> !text.isBlank())
                    .map(URI::create);
        } catch (IllegalArgumentException noUri) {
            throw Refusal.malformed("fhirServer is no URL.");
        }
    }

    private static Map<String, Optional<JsonNode>> prefetch(JsonNode call) {
        Map<String, Optional<JsonNode>> prefetch = new TreeMap<>();
        call.path("prefetch")
                .fields()
                .forEachRemaining(each ->
                        prefetch.put(each.getKey(), Optional.of(each.getValue()).filter(value -> !value.isNull())));
        return prefetch;
    }

    /** Names no patient. */
    @Override
    public String toString() {
        return hook + " " + instance;
    }
}
