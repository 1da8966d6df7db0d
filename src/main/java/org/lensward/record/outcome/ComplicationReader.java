package org.lensward.record.outcome;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.AdverseEvent;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.eye.Laterality;
import org.lensward.outcome.Complication;
import org.lensward.record.Codes;
import org.lensward.record.Dates;
import org.lensward.record.Evidences;
import org.lensward.record.EyeRecord;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;
import org.lensward.record.Unused;

/**
 * Reads what went otherwise: {@code Procedure.complication}, {@code Procedure.complicationDetail}, adverse events that name the operation,
 * and diagnoses of that eye from the day on. That nothing happened counts only where somebody said so.
 */
final class ComplicationReader {

    /** Our code for "nothing went otherwise". */
    static final String NONE = "none";

    /** SNOMED CT, those read in a stored source. */
    private static final Map<String, Complication> SNOMED = Map.of(
            "1847009", Complication.ENDOPHTHALMITIS,
            "42059000", Complication.RETINAL_DETACHMENT);

    /** SNOMED CT: successful (qualifier), as Procedure.outcome; value from memory. */
    private static final String SUCCESSFUL = "385669000";

    private final Shelf shelf;
    private final EyeRecord eyes;
    private final Evidences evidences;
    private final List<Unused> unused;
    private final Set<Complication> found = EnumSet.noneOf(Complication.class);
    private boolean told;

    ComplicationReader(Shelf shelf, EyeRecord eyes, Evidences evidences, List<Unused> unused) {
        this.shelf = shelf;
        this.eyes = eyes;
        this.evidences = evidences;
        this.unused = unused;
    }

    /** Whether anyone said how it went. */
    boolean told() {
        return told;
    }

    /**
     * Of one operation.
     *
     * @param until the day before which a diagnosis still belongs to it; none where no later operation of that eye is recorded
     */
    Set<Complication> of(DatedOperation operation, Optional<LocalDate> until) {
        Procedure procedure = operation.procedure();
        procedure.getComplication().forEach(each -> stated(each, procedure));
        told |= Codes.has(procedure.getOutcome(), Systems.SNOMED, SUCCESSFUL);
        shelf.all(AdverseEvent.class)
                .filter(each -> concerns(each, procedure))
                .forEach(each -> stated(each.getEvent(), each));
        shelf.all(Condition.class)
                .filter(each ->
                        Shelf.refers(procedure.getComplicationDetail(), each) || isOfEye(each, operation, until))
                .forEach(each -> understood(each.getCode()).ifPresent(this::add));
        return found;
    }

    private static boolean concerns(AdverseEvent event, Procedure procedure) {
        Stream<Reference> named = Stream.concat(
                Stream.of(event.getResultingCondition(), event.getReferenceDocument())
                        .flatMap(List::stream),
                event.getSuspectEntity().stream().map(each -> each.getInstance()));
        return named.map(Shelf::name).anyMatch(Shelf.name(procedure)::equals);
    }

    private void stated(CodeableConcept code, Resource resource) {
        if (Codes.has(code, Systems.COMPLICATION, NONE)) {
            told = true;
            return;
        }
        Optional<Complication> known = understood(code);
        if (known.isEmpty()) {
            unused.add(new Unused(Unused.Reason.COMPLICATION_NOT_UNDERSTOOD, evidences.of(resource, "")));
        }
        add(known.orElse(Complication.OTHER));
    }

    private void add(Complication complication) {
        told = true;
        found.add(complication);
    }

    private static Optional<Complication> understood(CodeableConcept code) {
        Optional<Complication> ours = Codes.in(code, Systems.COMPLICATION)
                .flatMap(each -> Stream.of(Complication.values())
                        .filter(known -> known.code().equals(each))
                        .findFirst());
        return ours.or(() -> Codes.in(code, Systems.SNOMED).map(SNOMED::get));
    }

    /** A diagnosis that means a complication, begun in that eye from the day of the operation on. */
    private boolean isOfEye(Condition condition, DatedOperation operation, Optional<LocalDate> until) {
        Optional<LocalDate> onset =
                Dates.day(condition.getOnset()).or(() -> Dates.day(condition.getRecordedDateElement()));
        if (understood(condition.getCode()).isEmpty()
                || onset.isEmpty()
                || onset.get().isBefore(operation.day())
                || until.filter(day -> !onset.get().isBefore(day)).isPresent()) {
            return false;
        }
        Set<Laterality> named = eyes.eyes(condition.getCode(), condition.getBodySite());
        if (named.size() != 1) {
            unused.add(new Unused(Unused.Reason.COMPLICATION_WITHOUT_EYE, evidences.of(condition, "bodySite")));
        }
        return named.equals(Set.of(operation.eye()));
    }
}
