package org.lensward.board.api;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.record.UnreadableRecord;

/**
 * One object of a JSON file that people wrote: every fault is refused by the place it stands at.
 *
 * @param node the object, or nothing
 * @param place such as {@code presented.carton}
 */
record Told(JsonNode node, String place) {

    Told {
        if (!node.isMissingNode() && !node.isNull() && !node.isObject()) {
            throw refused(place, "is no object");
        }
    }

    /** The same, if it has no other fields. */
    Told only(String... known) {
        node.fieldNames().forEachRemaining(name -> {
            if (!Set.of(known).contains(name)) {
                throw refused(place + "." + name, "is not known; known are " + String.join(", ", known));
            }
        });
        return this;
    }

    boolean has(String name) {
        return node.hasNonNull(name);
    }

    Told part(String name) {
        return new Told(node.path(name), place + "." + name);
    }

    Stream<Told> parts(String name) {
        JsonNode list = list(name);
        return IntStream.range(0, list.size())
                .mapToObj(index -> new Told(list.get(index), place + "." + name + "[" + index + "]"));
    }

    List<String> texts(String name) {
        List<String> texts = new ArrayList<>();
        for (JsonNode each : list(name)) {
            if (!each.isTextual()) {
                throw refused(place + "." + name, "holds something that is no text");
            }
            texts.add(each.textValue());
        }
        return texts;
    }

    Optional<String> text(String name) {
        return one(name, text -> text);
    }

    <T> Optional<T> one(String name, Function<String, T> read) {
        if (!has(name)) {
            return Optional.empty();
        }
        if (!node.get(name).isTextual()) {
            throw refused(place + "." + name, "is no text");
        }
        return Optional.of(part(name, () -> read.apply(node.get(name).textValue())));
    }

    <T> T required(String name, Function<String, T> read) {
        return one(name, read).orElseThrow(() -> refused(place + "." + name, "is missing"));
    }

    /** What is made of the whole object. */
    <T> T checked(Supplier<T> made) {
        return at(place, made);
    }

    private <T> T part(String name, Supplier<T> made) {
        return at(place + "." + name, made);
    }

    private static <T> T at(String place, Supplier<T> made) {
        try {
            return made.get();
        } catch (IllegalArgumentException | DateTimeException unreadable) {
            throw refused(place, "cannot be read: " + unreadable.getMessage());
        }
    }

    private JsonNode list(String name) {
        JsonNode list = node.path(name);
        if (!list.isMissingNode() && !list.isNull() && !list.isArray()) {
            throw refused(place + "." + name, "is no list");
        }
        return list;
    }

    private static UnreadableRecord refused(String place, String why) {
        return new UnreadableRecord(IssueType.VALUE, place, place + " " + why + ".");
    }
}
