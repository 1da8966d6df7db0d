package org.lensward.record.incoming;

import java.util.List;
import org.hl7.fhir.r4.model.Resource;

/**
 * Resources for the record, of one patient, under lasting ids, without their subject yet.
 *
 * @param whom whose they are
 * @param resources the resources
 * @param onlyKnown whether they matter only where the record already holds them: the withdrawal of what may never have been ours
 */
public record Incoming(Whom whom, List<Resource> resources, boolean onlyKnown) {

    public Incoming {
        resources = List.copyOf(resources);
    }

    @Override
    public String toString() {
        return resources.size() + " resources of " + whom;
    }
}
