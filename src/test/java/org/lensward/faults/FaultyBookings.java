package org.lensward.faults;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.record.Fhir;

/** The ordinary eye of the demo once more under other names, so that each fault has a booking and a patient of its own. */
final class FaultyBookings {

    private static final FhirContext FHIR = Fhir.r4();
    private static final Path ORDINARY = Path.of("demo-data/an-ordinary-eye/in.json");

    private final IGenericClient record;

    FaultyBookings(String url) {
        FHIR.getRestfulClientFactory().setSocketTimeout(60_000);
        this.record = FHIR.newRestfulGenericClient(url);
    }

    /** Everything the ordinary eye's record holds, its ids ending in that name instead of 01. */
    void add(String name) throws IOException {
        String text = Files.readString(ORDINARY).replaceAll("([a-z])-01\"", "$1-" + name + "\"");
        if (!text.contains("ServiceRequest/booking-" + name)) {
            throw new AssertionError("The demo's ids have changed");
        }
        record.transaction()
                .withBundle(FHIR.newJsonParser().parseResource(Bundle.class, text))
                .execute();
    }

    <T extends Resource> T read(Class<T> type, String id) {
        return record.read().resource(type).withId(id).execute();
    }

    void update(Resource resource) {
        record.update().resource(resource).execute();
    }

    /** Whatever of that type belongs to the booking's plan and stands. */
    List<Resource> standing(Class<? extends Resource> type, String name) {
        String search = type == Observation.class
                ? "Observation?subject=Patient/patient-" + name + "&status=preliminary"
                : type.getSimpleName() + "?identifier=https://lensward.org/fhir/sid/eye-plan|booking-" + name;
        return record.search().byUrl(search + "&_count=200").returnBundle(Bundle.class).execute().getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .toList();
    }
}
