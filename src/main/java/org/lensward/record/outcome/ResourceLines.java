package org.lensward.record.outcome;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.Reader;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.record.UnreadableRecord;

/**
 * The resources of a file, one after the other: each line of a bulk export (NDJSON), or each entry of a Bundle. Only one is in memory at
 * a time, so a file may be of any length.
 */
final class ResourceLines {

    static final ObjectMapper JSON = new ObjectMapper();

    private final String name;
    private final Taker taker;

    private ResourceLines(String name, Taker taker) {
        this.name = name;
        this.taker = taker;
    }

    /**
     * Hands over every resource.
     *
     * @param name of the file, for a message
     * @throws UnreadableRecord where it is not JSON or not FHIR, with the line
     */
    static void read(Reader file, String name, Taker taker) throws IOException {
        try (JsonParser parser = JSON.createParser(file)) {
            new ResourceLines(name, taker).all(parser);
        } catch (JsonProcessingException broken) {
            throw new UnreadableRecord(
                    IssueType.STRUCTURE, name + ":" + broken.getLocation().getLineNr(), "This line is not JSON.");
        }
    }

    private void all(JsonParser parser) throws IOException {
        while (parser.nextToken() != null) {
            if (parser.currentToken() != JsonToken.START_OBJECT) {
                throw refusal(parser, "Expected a FHIR resource.");
            }
            value(parser);
        }
    }

    /** The parts of a resource, but the entries of a Bundle one by one. */
    private void value(JsonParser parser) throws IOException {
        ObjectNode resource = JSON.createObjectNode();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String field = parser.currentName();
            if (parser.nextToken() == JsonToken.START_ARRAY && field.equals("entry")) {
                while (parser.nextToken() != JsonToken.END_ARRAY) {
                    entry(parser.readValueAsTree());
                }
            } else {
                resource.set(field, parser.readValueAsTree());
            }
        }
        String type = resource.path("resourceType").asText();
        if (type.isEmpty()) {
            throw refusal(parser, "Expected a FHIR resource; it has no resourceType.");
        }
        if (!type.equals("Bundle")) {
            taker.take(resource);
        }
    }

    private void entry(JsonNode entry) throws IOException {
        if (entry.path("resource") instanceof ObjectNode resource) {
            if (resource.path("resourceType").asText().equals("Bundle")) {
                for (JsonNode nested : resource.path("entry")) {
                    entry(nested);
                }
            } else {
                taker.take(resource);
            }
        }
    }

    private UnreadableRecord refusal(JsonParser parser, String words) {
        return new UnreadableRecord(
                IssueType.STRUCTURE, name + ":" + parser.currentLocation().getLineNr(), words);
    }

    /** Takes one resource. */
    interface Taker {
        void take(ObjectNode resource) throws IOException;
    }
}
