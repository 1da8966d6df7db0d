package org.lensward.record;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * One change to a piece of JSON.
 *
 * @param pointer where it goes; ending in {@code -} it adds to an array
 * @param value what goes there, in JSON; empty to take away what is there
 */
public record JsonEdit(String pointer, String value) {

    private static final ObjectMapper JSON = new ObjectMapper();

    public void apply(JsonNode tree) throws JsonProcessingException {
        JsonPointer place = JsonPointer.compile(pointer);
        JsonNode parent = tree.at(place.head());
        String last = place.last().getMatchingProperty();
        if (parent instanceof ObjectNode object) {
            change(object, last);
        } else {
            change((ArrayNode) parent, last);
        }
    }

    private void change(ObjectNode object, String field) throws JsonProcessingException {
        if (value.isEmpty()) {
            object.remove(field);
        } else {
            object.set(field, JSON.readTree(value));
        }
    }

    private void change(ArrayNode array, String index) throws JsonProcessingException {
        if (index.equals("-")) {
            array.add(JSON.readTree(value));
        } else if (value.isEmpty()) {
            array.remove(Integer.parseInt(index));
        } else {
            array.set(Integer.parseInt(index), JSON.readTree(value));
        }
    }
}
