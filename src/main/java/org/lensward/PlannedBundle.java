package org.lensward;

import org.hl7.fhir.r4.model.Bundle;
import org.lensward.flow.BundlePlanning;
import org.lensward.record.Publication;

/** A Bundle with the plans of its bookings in it, as the record would hold them; nothing is posted. */
final class PlannedBundle {

    private PlannedBundle() {}

    /** The same Bundle, with what planning writes behind what was read. */
    static Bundle of(Bundle all, BundlePlanning planning) {
        planning.plan(all).forEach(each -> {
            if (each.publication() instanceof Publication.Write write) {
                write.bundle().getEntry().forEach(all::addEntry);
            }
        });
        return all;
    }
}
