package org.lensward.board.eye;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;

/**
 * What an element of a resource says, as lines of name and value. An element is named as findings name it, such as {@code valueQuantity}
 * or {@code code.coding}; {@code value} stands for any of FHIR's value[x].
 */
final class ElementValues {

    private ElementValues() {}

    /**
     * A line.
     *
     * @param name the path below the element; empty for the element itself
     * @param value as the record has it
     */
    record Line(String name, String value) {}

    static List<Line> of(JsonNode resource, String element) {
        List<JsonNode> found = List.of(resource);
        for (String step : element.split("\\.")) {
            String name = step.replaceAll("\\[\\d+\\]$", "");
            found = found.stream()
                    .flatMap(each -> children(each, name).stream())
                    .toList();
        }
        List<Line> lines = new ArrayList<>();
        found.forEach(each -> leaves(each, "", lines));
        return lines;
    }

    private static List<JsonNode> children(JsonNode node, String name) {
        List<JsonNode> found = new ArrayList<>();
        Iterator<Map.Entry<String, JsonNode>> fields = node.fields();
        while (fields.hasNext()) {
            Map.Entry<String, JsonNode> field = fields.next();
            boolean choice = field.getKey().matches(java.util.regex.Pattern.quote(name) + "([A-Z].*)?");
            if (choice && field.getValue().isArray()) {
                field.getValue().forEach(found::add);
            } else if (choice) {
                found.add(field.getValue());
            }
        }
        return found;
    }

    private static void leaves(JsonNode node, String path, List<Line> lines) {
        if (node.isValueNode()) {
            lines.add(new Line(path, node.asText()));
        } else if (node.isArray()) {
            node.forEach(each -> leaves(each, path, lines));
        } else {
            node.fields()
                    .forEachRemaining(field -> leaves(
                            field.getValue(), path.isEmpty() ? field.getKey() : path + "." + field.getKey(), lines));
        }
    }
}
