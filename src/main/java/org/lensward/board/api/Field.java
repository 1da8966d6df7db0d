package org.lensward.board.api;

import java.util.function.Supplier;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.quantity.Dioptres;
import org.lensward.record.UnreadableRecord;

/** Reads a field of a request: what a value type refuses is refused by the field's name. */
final class Field {

    private Field() {}

    static Dioptres dioptres(String field, String text) {
        return read(field, () -> Dioptres.parse(text));
    }

    static <T> T read(String field, Supplier<T> made) {
        try {
            return made.get();
        } catch (IllegalArgumentException unreadable) {
            throw new UnreadableRecord(IssueType.VALUE, field, field + " cannot be read: " + unreadable.getMessage());
        }
    }
}
