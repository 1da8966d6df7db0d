package org.lensward.record.bank;

import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.record.Shelf;

/** Several writes that the record takes together or not at all, each guarded by the version it replaces. */
public final class GuardedTransaction {

    private final Bundle bundle = new Bundle().setType(BundleType.TRANSACTION);

    /** Replaces what was read, if it is still in that version. */
    public GuardedTransaction replace(Resource resource) {
        put(resource).getRequest().setIfMatch(etag(resource.getMeta().getVersionId()));
        return this;
    }

    /**
     * Writes what is not there yet. No version has the number 0: the record creates the resource where there is none and refuses where
     * there is one. {@code If-None-Match}, which HTTP has for this, is ignored by HAPI.
     */
    public GuardedTransaction create(Resource resource) {
        put(resource).getRequest().setIfMatch(etag("0"));
        return this;
    }

    /** Writes it whether it was there or not: another resource of the transaction guards it. */
    public GuardedTransaction write(Resource resource) {
        put(resource);
        return this;
    }

    /** Adds the trail of what is written. */
    public GuardedTransaction trail(Provenance trail) {
        bundle.addEntry()
                .setResource(trail)
                .getRequest()
                .setMethod(HTTPVerb.POST)
                .setUrl("Provenance");
        return this;
    }

    /** To post. */
    public Bundle bundle() {
        return bundle;
    }

    private BundleEntryComponent put(Resource resource) {
        BundleEntryComponent entry = bundle.addEntry().setResource(resource);
        entry.getRequest().setMethod(HTTPVerb.PUT).setUrl(Shelf.name(resource));
        return entry;
    }

    private static String etag(String version) {
        return "W/\"" + version + "\"";
    }
}
