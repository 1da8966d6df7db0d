package org.lensward.record.check;

import ca.uhn.fhir.model.api.TemporalPrecisionEnum;
import java.time.OffsetDateTime;
import java.util.Date;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TimeZone;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.record.Evidences;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;
import org.lensward.record.UnreadableRecord;

/** One step as one FHIR transaction: what changes, each piece only in the version that was read, and who answers for it. */
final class CheckTransaction {

    private final Shelf shelf;
    private final OffsetDateTime now;

    CheckTransaction(Shelf shelf, OffsetDateTime now) {
        this.shelf = shelf;
        this.now = now;
    }

    /**
     * The transaction.
     *
     * @param activity in words, such as {@code Lens check: pick}
     * @param agents everybody who answers for it
     * @param changed what is put
     */
    Bundle of(String activity, List<String> agents, List<? extends Resource> changed) {
        Bundle bundle = new Bundle().setType(BundleType.TRANSACTION);
        changed.forEach(each -> put(bundle, each));
        put(bundle, trail(activity, agents, changed));
        return bundle;
    }

    private void put(Bundle bundle, Resource resource) {
        String name = Shelf.name(resource);
        Bundle.BundleEntryComponent entry = bundle.addEntry().setResource(resource);
        entry.getRequest().setMethod(HTTPVerb.PUT).setUrl(name);
        shelf.find(Resource.class, new Reference(name))
                .ifPresent(old -> entry.getRequest().setIfMatch("W/\"" + version(old) + "\""));
    }

    private static String version(Resource old) {
        String version = old.getMeta().getVersionId();
        if (version == null) {
            throw new UnreadableRecord(
                    IssueType.REQUIRED,
                    Shelf.name(old) + ".meta.versionId",
                    "What a lens check changes must carry the version that was read; read it from the server.");
        }
        return version;
    }

    /** Named by what it tells of, so that a repeat overwrites. */
    private Provenance trail(String activity, List<String> agents, List<? extends Resource> changed) {
        Provenance trail = new Provenance();
        trail.getMeta().addProfile(Systems.profile("check-provenance"));
        Set<String> who = new LinkedHashSet<>(agents);
        changed.forEach(each -> trail.addTarget(new Reference(Shelf.name(each))));
        trail.setRecordedElement(
                new InstantType(Date.from(now.toInstant()), TemporalPrecisionEnum.SECOND, TimeZone.getTimeZone("UTC")));
        trail.setActivity(new CodeableConcept().setText(activity));
        who.forEach(each -> trail.addAgent().setWho(Outputs.who(each)));
        trail.setId("check-"
                + Evidences.digest(activity + "|" + who + "|" + now.toInstant() + "|" + Shelf.name(changed.get(0))));
        return trail;
    }
}
