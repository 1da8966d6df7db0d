package org.lensward.record.bank;

import ca.uhn.fhir.model.api.TemporalPrecisionEnum;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Provenance.ProvenanceEntityRole;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.MovementKind;
import org.lensward.record.Codes;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/** What stays of a movement: who, when, why, for which booking, from which version to what. */
final class Trail {

    private Trail() {}

    /**
     * The trail of one movement.
     *
     * @param before the versions moved from; none for what is new
     * @param after what is written
     */
    static Provenance of(Movement movement, Signature signature, List<Resource> before, List<Resource> after) {
        Provenance trail = new Provenance();
        trail.getMeta().addProfile(Systems.profile("unit-movement"));
        after.forEach(each -> trail.addTarget(new Reference(Shelf.name(each))));
        trail.setRecordedElement(
                new InstantType(Date.from(signature.at()), TemporalPrecisionEnum.MILLI, TimeZone.getTimeZone("UTC")));
        trail.setActivity(activity(movement.kind()));
        movement.to().ifPresent(store -> trail.setLocation(new Reference(store)));
        movement.reason().ifPresent(reason -> trail.addReason(new CodeableConcept().setText(reason)));
        trail.addAgent().setWho(signature.reference());
        before.forEach(each -> entity(trail, ProvenanceEntityRole.REVISION, Shelf.versionedName(each)));
        movement.booking().ifPresent(booking -> entity(trail, ProvenanceEntityRole.SOURCE, booking));
        return trail;
    }

    private static CodeableConcept activity(MovementKind kind) {
        String words = kind.done();
        return Codes.concept(
                Systems.UNIT_MOVEMENT,
                kind.code(),
                words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1));
    }

    private static void entity(Provenance trail, ProvenanceEntityRole role, String what) {
        trail.addEntity().setRole(role).setWhat(new Reference(what));
    }
}
