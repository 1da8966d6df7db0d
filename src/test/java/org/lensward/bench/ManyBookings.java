package org.lensward.bench;

import ca.uhn.fhir.rest.client.api.IGenericClient;
import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.demo.TheatreDay;

/** The demo's theatre day over and over: each copy has patients, bookings and measurements of its own and shares the lens models. */
final class ManyBookings {

    private final List<Bundle> day = new TheatreDay(RecordApart.FHIR).bundles();

    int inOneCopy() {
        return day.size();
    }

    /** Sends the copies from the first to before the last. */
    void load(IGenericClient record, int first, int last) {
        for (Bundle bundle : day) {
            for (int copy = first; copy < last; copy++) {
                record.transaction().withBundle(copy(bundle, "-" + copy)).execute();
            }
        }
    }

    private static Bundle copy(Bundle bundle, String suffix) {
        String text = RecordApart.FHIR.newJsonParser().encodeResourceToString(bundle);
        for (Resource each : own(bundle)) {
            String id = each.getIdElement().getIdPart();
            text = text.replace("\"id\":\"" + id + "\"", "\"id\":\"" + id + suffix + "\"")
                    .replace(each.fhirType() + "/" + id + "\"", each.fhirType() + "/" + id + suffix + "\"");
        }
        return RecordApart.FHIR.newJsonParser().parseResource(Bundle.class, text);
    }

    private static List<Resource> own(Bundle bundle) {
        List<Resource> own = new ArrayList<>();
        bundle.getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .filter(each -> !(each instanceof DeviceDefinition || each instanceof Location))
                .forEach(own::add);
        return own;
    }
}
