package org.lensward.record.hl7;

import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.model.Segment;
import ca.uhn.hl7v2.util.Terser;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.lensward.finding.FindingCode;
import org.lensward.record.incoming.RefusedInput;

/**
 * One segment's fields, whatever the version of the message.
 *
 * @param place the segment's name and number, such as {@code OBX(2)}
 * @param segment as parsed
 */
record Fields(String place, Segment segment) {

    String name() {
        return segment.getName();
    }

    /** The place of a field, for a message. */
    String at(int field) {
        return place + "-" + field;
    }

    /** The first component of the field's first repetition; empty text where it is empty or deleted. */
    String text(int field) {
        return text(field, 0, 1);
    }

    String text(int field, int repetition, int component) {
        return text(field, repetition, component, 1);
    }

    /** One subcomponent; repetitions count from 0, the others from 1. HL7's explicit null reads as empty. */
    String text(int field, int repetition, int component, int subcomponent) {
        try {
            String text = Terser.get(segment, field, repetition, component, subcomponent);
            return text == null || text.equals("\"\"") ? "" : text.trim();
        } catch (HL7Exception wrong) {
            throw new RefusedInput(
                    FindingCode.MESSAGE_UNREADABLE, at(field), at(field), "its parts cannot be told apart");
        }
    }

    /** A field that must be filled. */
    String required(int field) {
        String text = text(field);
        if (text.isEmpty()) {
            throw new RefusedInput(FindingCode.MESSAGE_FIELD_MISSING, at(field), at(field));
        }
        return text;
    }

    int repetitions(int field) {
        try {
            return segment.getField(field).length;
        } catch (HL7Exception wrong) {
            throw new RefusedInput(
                    FindingCode.MESSAGE_UNREADABLE, at(field), at(field), "its parts cannot be told apart");
        }
    }

    /** Every repetition of the field as a code. */
    List<Coded> codes(int field) {
        return IntStream.range(0, repetitions(field))
                .mapToObj(repetition -> code(field, repetition))
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<Coded> code(int field, int repetition) {
        Coded coded = new Coded(
                text(field, repetition, 1),
                text(field, repetition, 2),
                text(field, repetition, 3),
                Optional.of(text(field, repetition, 4)).filter(each -> !each.isEmpty()),
                text(field, repetition, 6));
        return coded.isEmpty() ? Optional.empty() : Optional.of(coded);
    }

    /** An entity identifier (EI): its value with its namespace and universal id; empty text where there is no value. */
    String entity(int field) {
        String value = text(field);
        return value.isEmpty() ? "" : value + "^" + text(field, 0, 2) + "^" + text(field, 0, 3);
    }
}
