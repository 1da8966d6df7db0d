package org.lensward.record.check;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskStatus;
import org.lensward.check.CheckProgress;
import org.lensward.check.Checkpoint;
import org.lensward.check.Expected;
import org.lensward.check.Verified;
import org.lensward.record.Codes;
import org.lensward.record.PlanKey;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/**
 * A lens check as it stands in the record.
 *
 * @param task the Task
 * @param expected what it expects
 * @param progress how far it has come
 */
public record StoredCheck(Task task, Expected expected, CheckProgress progress) {

    /** The check of the plan with that fingerprint; the last one, where a surgeon chose again. */
    static Optional<StoredCheck> find(Shelf shelf, String booking, String fingerprint) {
        return all(shelf, booking)
                .filter(each -> each.getStatus() != TaskStatus.CANCELLED)
                .filter(each -> each.getStatus() != TaskStatus.ENTEREDINERROR)
                .filter(each -> new TaskInputs(each)
                        .all("fingerprint", StringType.class)
                        .anyMatch(hex -> fingerprint.equals(hex.getValue())))
                .max(Comparator.comparingInt(StoredCheck::number))
                .map(each -> new StoredCheck(each, ExpectedReader.read(shelf, each), progress(each)));
    }

    private static Stream<Task> all(Shelf shelf, String booking) {
        return shelf.all(Task.class)
                .filter(each -> each.getIdentifier().stream()
                        .anyMatch(PlanKey.of(booking).identifier()::equalsDeep))
                .filter(each -> Codes.has(each.getCode(), Systems.TASK, "verify-lens"));
    }

    private static CheckProgress progress(Task task) {
        List<Verified> verified = Stream.of(Checkpoint.values())
                .filter(each -> passed(new Outputs(task, each.code())))
                .map(each -> {
                    Outputs outputs = new Outputs(task, each.code());
                    return new Verified(each, outputs.words("carton"), outputs.words("list-place"));
                })
                .toList();
        return new CheckProgress(TaskState.read(task), verified);
    }

    private static boolean passed(Outputs outputs) {
        return outputs.has("passed") || outputs.has("overridden");
    }

    /** 1 for the check a plan opens, then one more for each that took its place. */
    private static int number(Task task) {
        String[] parts = task.getIdElement().getIdPart().split("-check-", 2);
        int hyphen = parts[parts.length - 1].indexOf('-');
        return hyphen < 0 ? 1 : Integer.parseInt(parts[parts.length - 1].substring(hyphen + 1));
    }

    /** The surgeon who confirmed it; empty where nobody did. */
    public String confirmedBy() {
        return new Outputs(task, Outputs.CONFIRMATION)
                .all("by")
                .filter(Reference.class::isInstance)
                .map(Reference.class::cast)
                .map(who -> who.hasDisplay() ? who.getDisplay() : Shelf.name(who))
                .findFirst()
                .orElse("");
    }

    /** The id of the check that takes this one's place. */
    String nextId(Shelf shelf) {
        String stem = stem(task);
        int last = shelf.all(Task.class)
                .filter(each -> stem(each).equals(stem))
                .mapToInt(StoredCheck::number)
                .max()
                .orElse(1);
        return stem + "-" + (last + 1);
    }

    private static String stem(Task task) {
        String id = task.getIdElement().getIdPart();
        return id.matches(".*-check-[0-9a-f]+-\\d+") ? id.substring(0, id.lastIndexOf('-')) : id;
    }
}
