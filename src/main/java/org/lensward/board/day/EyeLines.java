package org.lensward.board.day;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.DecimalType;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.PrimitiveType;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.RiskAssessment;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;
import org.lensward.board.day.EyeLine.Person;
import org.lensward.board.day.EyeLine.PlannedLens;
import org.lensward.board.day.EyeLine.Risk;
import org.lensward.check.CheckState;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Dates;
import org.lensward.record.PlanKey;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;
import org.lensward.record.Systems;
import org.lensward.record.Vocabulary;

/** Reads the lines of the Day page from what the record holds. */
final class EyeLines {

    /** What to ask the record for. */
    static final List<String> QUESTIONS = Stream.concat(
                    StoredPlan.QUESTIONS.stream(), Stream.of("Task?code=" + Systems.TASK + "|verify-lens&_count=500"))
            .toList();

    private static final char NO_BREAK = '\u00a0';

    private final Shelf shelf;
    private final Map<String, Appointment> appointments;
    private final Map<String, Task> checks;

    EyeLines(Shelf shelf) {
        this.shelf = shelf;
        this.appointments = shelf.all(Appointment.class)
                .flatMap(each -> each.getBasedOn().stream().map(booking -> Map.entry(Shelf.name(booking), each)))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue, (first, second) -> first));
        this.checks = shelf.all(Task.class)
                .filter(each -> each.getStatus() != Task.TaskStatus.CANCELLED
                        && each.getStatus() != Task.TaskStatus.ENTEREDINERROR)
                .flatMap(each -> each.getIdentifier().stream()
                        .filter(key -> Systems.PLAN_IDENTIFIER.equals(key.getSystem()))
                        .map(key -> Map.entry(key.getValue(), each)))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue, EyeLines::later));
    }

    private static Task later(Task one, Task other) {
        return Comparator.comparing((Task each) -> each.getMeta().getLastUpdated())
                                .compare(one, other)
                        >= 0
                ? one
                : other;
    }

    /** Every booking of lens surgery that has a day, in the order of the lists. */
    List<EyeLine> all() {
        return StoredPlan.all(shelf)
                .flatMap(stored -> day(stored.booking()).map(day -> line(stored, day)).stream())
                .sorted(Comparator.comparing(EyeLine::day)
                        .thenComparing(EyeLine::theatre)
                        .thenComparing(EyeLine::time)
                        .thenComparing(EyeLine::booking))
                .toList();
    }

    private EyeLine line(StoredPlan stored, LocalDate day) {
        ServiceRequest booking = stored.booking();
        Optional<Appointment> appointment = appointment(booking);
        Optional<CheckState> check = check(booking);
        return new EyeLine(
                booking.getIdElement().getIdPart(),
                day,
                appointment.map(EyeLines::time).orElse(""),
                appointment.map(Appointment::getDescription).orElse("Theatre not stated"),
                shelf.find(Patient.class, booking.getSubject())
                        .map(EyeLines::person)
                        .orElseGet(() -> new Person("not in the record", "", "")),
                eye(stored),
                surgeon(booking),
                state(stored, check),
                stored.primary()
                        .map(lens -> new PlannedLens(
                                lens.getCodeCodeableConcept().getText() + " "
                                        + StoredPlan.power(lens).replace(' ', NO_BREAK),
                                bar(stored))),
                stored.risk().map(EyeLines::risk),
                stored.issues().stream().map(DetectedIssue::getDetail).toList(),
                check);
    }

    private Optional<CheckState> check(ServiceRequest booking) {
        return Optional.ofNullable(checks.get(PlanKey.of(booking).value()))
                .flatMap(task -> Codes.in(task.getBusinessStatus(), Systems.CHECK_STATE))
                .flatMap(CheckState::of);
    }

    private static String state(StoredPlan stored, Optional<CheckState> check) {
        if (check.filter(CheckState.COMPLETED::equals).isPresent()) {
            return "done";
        }
        return stored.plan().map(StoredPlan::state).orElse("planning");
    }

    private Optional<Appointment> appointment(ServiceRequest booking) {
        return Optional.ofNullable(appointments.get(Shelf.name(booking)));
    }

    private Optional<LocalDate> day(ServiceRequest booking) {
        return appointment(booking)
                .flatMap(each -> Dates.day(each.getStartElement()))
                .or(() -> Dates.day(booking.getOccurrence()));
    }

    /** As written where it was written. */
    private static String time(Appointment appointment) {
        String start = appointment.getStartElement().getValueAsString();
        return start == null || start.length() < 16 ? "" : start.substring(11, 16);
    }

    private static String eye(StoredPlan stored) {
        return stored.plan()
                .map(Procedure::getBodySiteFirstRep)
                .map(Codes::words)
                .orElseGet(() -> stored.booking().hasBodySite()
                        ? Codes.words(stored.booking().getBodySiteFirstRep())
                        : "eye not stated");
    }

    private static String surgeon(ServiceRequest booking) {
        if (booking.getPerformerFirstRep().hasDisplay()) {
            return booking.getPerformerFirstRep().getDisplay();
        }
        return booking.hasPerformerType()
                ? Codes.words(booking.getPerformerType()).replace('-', ' ')
                : "not stated";
    }

    private static Person person(Patient patient) {
        HumanName name = patient.getNameFirstRep();
        String given = name.getGiven().stream().map(PrimitiveType::getValue).collect(Collectors.joining(" "));
        return new Person(
                Stream.of(name.getFamily(), given)
                        .filter(part -> part != null && !part.isBlank())
                        .collect(Collectors.joining(", ")),
                patient.getIdentifier().stream()
                        .map(Identifier::getValue)
                        .findFirst()
                        .orElse(""),
                patient.hasBirthDate() ? patient.getBirthDateElement().getValueAsString() : "");
    }

    private static Optional<PredictionBar> bar(StoredPlan stored) {
        Optional<Dioptres> target = stored.plan()
                .map(plan -> plan.getExtensionByUrl(Vocabulary.TARGET_EXTENSION))
                .map(Extension::getValue)
                .flatMap(EyeLines::dioptres);
        return stored.chosen()
                .flatMap(chosen ->
                        target.flatMap(wanted -> dioptres(chosen.getValue()).flatMap(predicted -> deviation(chosen)
                                .map(deviation -> new PredictionBar(predicted, deviation, wanted)))));
    }

    private static Optional<Dioptres> deviation(Observation chosen) {
        return chosen.getComponent().stream()
                .filter(each -> Codes.has(each.getCode(), Systems.MEASUREMENT, "standard-deviation"))
                .flatMap(each -> dioptres(each.getValue()).stream())
                .findFirst();
    }

    private static Optional<Dioptres> dioptres(@Nullable Type value) {
        return value instanceof Quantity quantity && quantity.hasValue()
                ? Optional.of(Dioptres.of(quantity.getValue().doubleValue()))
                : Optional.empty();
    }

    private static Risk risk(RiskAssessment assessment) {
        Function<Extension, BigDecimal> ratio =
                factor -> factor.getExtensionByUrl("odds-ratio").getValueAsPrimitive() instanceof DecimalType decimal
                        ? decimal.getValue()
                        : BigDecimal.ONE;
        return new Risk(
                assessment.getPredictionFirstRep().getProbabilityDecimalType().getValueAsString(),
                assessment.getExtensionsByUrl(Systems.extension("odds-factor")).stream()
                        .max(Comparator.comparing(ratio))
                        .map(factor -> factor.getExtensionString("words"))
                        .orElse(""));
    }
}
