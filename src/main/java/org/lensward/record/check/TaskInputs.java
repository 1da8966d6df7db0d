package org.lensward.record.check;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Type;
import org.lensward.record.Codes;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;
import org.lensward.record.UnreadableRecord;

/** What a lens check's Task expects, by the codes of {@code check-input}. */
record TaskInputs(Task task) {

    <T extends Type> Stream<T> all(String code, Class<T> type) {
        return task.getInput().stream()
                .filter(each -> Codes.has(each.getType(), Systems.CHECK_INPUT, code))
                .map(Task.ParameterComponent::getValue)
                .filter(type::isInstance)
                .map(type::cast);
    }

    /** The input, where it is there; two of a kind are none that anybody could rely on. */
    <T extends Type> Optional<T> one(String code, Class<T> type) {
        List<T> found = all(code, type).toList();
        if (found.size() > 1) {
            throw unreadable(IssueType.DUPLICATE, code, "stands there twice");
        }
        return found.stream().findFirst();
    }

    <T extends Type> T required(String code, Class<T> type) {
        return one(code, type).orElseThrow(() -> unreadable(IssueType.REQUIRED, code, "is missing"));
    }

    UnreadableRecord unreadable(IssueType type, String code, String fault) {
        return new UnreadableRecord(
                type,
                Shelf.name(task) + ".input",
                "The input " + code + " of the lens check " + fault + "; let the plan be made again.");
    }
}
