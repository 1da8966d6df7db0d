package org.lensward.record.check;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Type;
import org.lensward.check.Difference;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.record.Codes;
import org.lensward.record.Systems;

/**
 * What one stage left on the Task: each output has two codings, what it is and at which stage.
 *
 * @param task the lens check
 * @param stage a code of {@code checkpoint}, such as {@code pick}
 */
record Outputs(Task task, String stage) {

    /** The stage at which a surgeon decides. */
    static final String CONFIRMATION = "confirmation";

    private static final String STAFF = "(Practitioner|PractitionerRole)/[A-Za-z0-9.-]{1,64}";

    Outputs text(String code, Optional<String> words) {
        words.filter(each -> !each.isBlank()).ifPresent(each -> add(code, new StringType(each)));
        return this;
    }

    Outputs person(String code, Optional<String> name) {
        name.ifPresent(each -> add(code, who(each)));
        return this;
    }

    Outputs device(String code, Optional<String> name) {
        name.ifPresent(each -> add(code, new Reference(each)));
        return this;
    }

    /** To the second, with the offset of where it was. */
    Outputs time(OffsetDateTime at) {
        return add("at", new DateTimeType(written(at)));
    }

    static String written(OffsetDateTime at) {
        return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(at.withNano(0));
    }

    Outputs result(String code) {
        return add("result", Codes.concept(Systems.CHECK_RESULT, code, code));
    }

    Outputs differences(List<Difference> differences, Evidence evidence) {
        for (Difference each : differences) {
            Finding finding = each.finding(evidence);
            CodeableConcept said = new CodeableConcept(new Coding()
                    .setSystem(Systems.FINDING)
                    .setCode(finding.code().code()));
            add("difference", said.setText(finding.message()));
        }
        return this;
    }

    Stream<Type> all(String code) {
        return task.getOutput().stream()
                .filter(each -> Codes.has(each.getType(), Systems.CHECKPOINT, stage))
                .filter(each -> Codes.has(each.getType(), Systems.CHECK_OUTPUT, code))
                .map(Task.TaskOutputComponent::getValue);
    }

    String words(String code) {
        return all(code).map(Type::primitiveValue).findFirst().orElse("");
    }

    boolean has(String result) {
        return all("result")
                .anyMatch(
                        each -> each instanceof CodeableConcept said && Codes.has(said, Systems.CHECK_RESULT, result));
    }

    /** Takes the other Task's outputs of this stage over. */
    void from(Task other) {
        other.getOutput().stream()
                .filter(each -> Codes.has(each.getType(), Systems.CHECKPOINT, stage))
                .forEach(each -> task.addOutput(each.copy()));
    }

    private Outputs add(String code, Type value) {
        CodeableConcept type = new CodeableConcept()
                .addCoding(new Coding().setSystem(Systems.CHECK_OUTPUT).setCode(code))
                .addCoding(new Coding().setSystem(Systems.CHECKPOINT).setCode(stage));
        task.addOutput().setType(type).setValue(value);
        return this;
    }

    /** Somebody the record knows, or a name. */
    static Reference who(String name) {
        return name.matches(STAFF) ? new Reference(name) : new Reference().setDisplay(name);
    }
}
