package org.lensward.record.bank;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Provenance.ProvenanceEntityRole;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.record.Codes;
import org.lensward.record.Shelf;

/**
 * One thing that happened to a carton, as its Provenance has it.
 *
 * @param done in words, such as "Reserved"
 * @param who answers for it
 * @param at when
 * @param reason why, where somebody had to say
 * @param booking for which booking
 * @param store the place it was carried to
 */
public record UnitEvent(
        String done,
        String who,
        Instant at,
        Optional<String> reason,
        Optional<String> booking,
        Optional<String> store) {

    static List<UnitEvent> all(Shelf shelf) {
        return shelf.all(Provenance.class)
                .filter(Provenance::hasRecorded)
                .map(UnitEvent::of)
                .sorted(Comparator.comparing(UnitEvent::at).reversed())
                .toList();
    }

    private static UnitEvent of(Provenance trail) {
        return new UnitEvent(
                Codes.words(trail.getActivity()),
                named(trail.getAgentFirstRep().getWho()).orElse("nobody named"),
                trail.getRecorded().toInstant(),
                trail.getReason().stream()
                        .map(CodeableConcept::getText)
                        .flatMap(Stream::ofNullable)
                        .findFirst(),
                trail.getEntity().stream()
                        .filter(entity -> entity.getRole() == ProvenanceEntityRole.SOURCE)
                        .map(entity -> Shelf.name(entity.getWhat()))
                        .filter(name -> name.startsWith("ServiceRequest/"))
                        .findFirst(),
                Optional.of(Shelf.name(trail.getLocation())).filter(name -> !name.isEmpty()));
    }

    private static Optional<String> named(Reference who) {
        return Stream.of(who.getDisplay(), who.getReference())
                .flatMap(Stream::ofNullable)
                .findFirst();
    }

    /** Names nobody. */
    @Override
    public String toString() {
        return "UnitEvent[" + done + ", " + at + "]";
    }
}
