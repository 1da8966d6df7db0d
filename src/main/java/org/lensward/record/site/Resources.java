package org.lensward.record.site;

import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Resource;

/** The resources of a Bundle, those of Bundles inside it too. */
final class Resources {

    private Resources() {}

    static Stream<Resource> of(Bundle bundle) {
        return bundle.getEntry().stream().flatMap(entry -> {
            if (entry.getResource() instanceof Bundle nested) {
                return of(nested);
            }
            return Stream.ofNullable(entry.getResource());
        });
    }
}
