package org.lensward.record.outcome;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Type;
import org.lensward.outcome.Opening;
import org.lensward.quantity.Millimetres;
import org.lensward.record.Codes;
import org.lensward.record.Systems;
import org.lensward.risk.opening.OpeningTechnique;

/** Reads how the capsule was to be opened, how the opening was made, and what became of it. */
final class OpeningThen {

    private static final String PLANNED = Systems.extension("planned-opening");

    private OpeningThen() {}

    /**
     * Of one operation; empty where the opening was never measured.
     *
     * @param seen every measurement in that eye
     * @param until the day of the eye's next operation, from which measurements are of that one
     */
    static Optional<Opening> of(DatedOperation operation, List<Opening.Seen> seen, Optional<LocalDate> until) {
        List<Opening.Seen> own = seen.stream()
                .filter(each -> !each.on().isBefore(operation.day()))
                .filter(each -> until.filter(day -> !each.on().isBefore(day)).isEmpty())
                .toList();
        if (own.isEmpty()) {
            return Optional.empty();
        }
        Optional<Opening.Seen> made =
                own.stream().filter(each -> each.on().equals(operation.day())).findFirst();
        return Optional.of(new Opening(
                planned(operation, "technique").flatMap(OpeningThen::technique),
                planned(operation, "diameter").flatMap(OpeningThen::millimetres),
                made,
                own.stream().filter(each -> each.on().isAfter(operation.day())).toList()));
    }

    private static Optional<Type> planned(DatedOperation operation, String part) {
        return Optional.ofNullable(operation.procedure().getExtensionByUrl(PLANNED))
                .map(whole -> whole.getExtensionByUrl(part))
                .map(Extension::getValue);
    }

    private static Optional<OpeningTechnique> technique(Type value) {
        return value instanceof CodeableConcept concept
                ? Codes.in(concept, Systems.OPENING_TECHNIQUE).flatMap(code -> Stream.of(OpeningTechnique.values())
                        .filter(each -> each.code().equals(code))
                        .findFirst())
                : Optional.empty();
    }

    private static Optional<Millimetres> millimetres(Type value) {
        return value instanceof Quantity given && given.hasValue()
                ? Optional.of(Millimetres.of(given.getValue().doubleValue()))
                : Optional.empty();
    }
}
