package org.lensward.record.check;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Task;
import org.jspecify.annotations.Nullable;
import org.lensward.check.BackUp;
import org.lensward.check.CheckedLens;
import org.lensward.check.Expected;
import org.lensward.check.Identity;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.record.EyeCodes;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/** Reads what a lens check expects from its Task, and the back-ups from the requests it names. */
final class ExpectedReader {

    private final Shelf shelf;
    private final Task task;
    private final TaskInputs inputs;

    private ExpectedReader(Shelf shelf, Task task) {
        this.shelf = shelf;
        this.task = task;
        this.inputs = new TaskInputs(task);
    }

    static Expected read(Shelf shelf, Task task) {
        return new ExpectedReader(shelf, task).read();
    }

    private Expected read() {
        return new Expected(
                new Evidence(
                        Shelf.name(task),
                        Optional.ofNullable(task.getMeta().getVersionId()).orElse(""),
                        ""),
                Shelf.name(task.getBasedOnFirstRep()),
                patient(),
                EyeCodes.eye(inputs.required("eye", CodeableConcept.class))
                        .orElseThrow(() -> inputs.unreadable(IssueType.VALUE, "eye", "names no single eye")),
                fingerprint(),
                lens(),
                inputs.one("lens-axis", Quantity.class).map(each -> Degrees.of(amount("lens-axis", each, "deg"))),
                operation(),
                allergies(),
                backUps());
    }

    private Identity patient() {
        Set<Identity.Number> numbers = inputs.all("patient-identifier", Identifier.class)
                .filter(each -> !blank(each.getSystem()) && !blank(each.getValue()))
                .map(each -> new Identity.Number(each.getSystem(), each.getValue()))
                .collect(Collectors.toSet());
        return new Identity(numbers, inputs.one("birth-date", DateType.class).flatMap(ExpectedReader::day));
    }

    /** A year or a month alone is no date of birth to compare. */
    private static Optional<LocalDate> day(DateType date) {
        return Optional.ofNullable(date.getValueAsString())
                .filter(each -> each.length() == "2026-03-16".length())
                .map(LocalDate::parse);
    }

    private String fingerprint() {
        String hex = inputs.required("fingerprint", StringType.class).getValueNotNull();
        if (!hex.matches("[0-9a-f]{64}")) {
            throw inputs.unreadable(IssueType.VALUE, "fingerprint", "is no fingerprint");
        }
        return hex;
    }

    private CheckedLens lens() {
        return new CheckedLens(
                Shelf.name(inputs.required("lens-model", Reference.class)),
                Dioptres.of(amount("lens-power", inputs.required("lens-power", Quantity.class), "[diop]")),
                inputs.one("lens-cylinder", Quantity.class)
                        .map(each -> Dioptres.of(amount("lens-cylinder", each, "[diop]"))));
    }

    private double amount(String code, Quantity quantity, String unit) {
        if (!quantity.hasValue() || !Systems.UCUM.equals(quantity.getSystem()) || !unit.equals(quantity.getCode())) {
            throw inputs.unreadable(IssueType.VALUE, code, "is no amount in " + unit);
        }
        return quantity.getValue().doubleValue();
    }

    private LocalDate operation() {
        return day(inputs.required("operation-day", DateType.class))
                .orElseThrow(() -> inputs.unreadable(IssueType.VALUE, "operation-day", "is no day"));
    }

    private Set<String> allergies() {
        return inputs.all("allergy", StringType.class).map(StringType::getValue).collect(Collectors.toSet());
    }

    private List<BackUp> backUps() {
        return inputs.all("back-up", Reference.class)
                .map(each -> RequestedLens.backUp(shelf, each)
                        .orElseThrow(() -> inputs.unreadable(
                                IssueType.NOTFOUND, "back-up", "names a lens request that cannot be read")))
                .toList();
    }

    private static boolean blank(@Nullable String text) {
        return text == null || text.isBlank();
    }
}
