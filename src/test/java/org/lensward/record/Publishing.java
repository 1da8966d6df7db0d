package org.lensward.record;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;

/** Plans a test's record and publishes into it, as a server would take the transaction. */
final class Publishing {

    static final Instant NOW = Instant.parse("2026-03-02T07:30:00Z");

    private Publishing() {}

    static Publication publish(Bundles record) {
        return new PlanTransaction(record.shelf(), NOW).publish(record.read(), record.plan());
    }

    static Publication withdraw(Bundles record) {
        Shelf shelf = record.shelf();
        ServiceRequest booking = shelf.all(ServiceRequest.class).findFirst().orElseThrow();
        return new PlanTransaction(shelf, NOW).withdraw(booking);
    }

    static Bundle written(Publication publication) {
        return ((Publication.Write) publication).bundle();
    }

    /** The record after the transaction: what was put there in its next version. */
    static Bundles taken(Bundles record, Publication publication) {
        for (BundleEntryComponent entry : written(publication).getEntry()) {
            Resource resource = entry.getResource().copy();
            String name = Shelf.name(resource);
            int version = record.all().stream()
                    .filter(each -> Shelf.name(each).equals(name))
                    .map(each -> Integer.parseInt(each.getMeta().getVersionId()))
                    .findFirst()
                    .orElse(0);
            resource.getMeta().setVersionId(String.valueOf(version + 1));
            record.add(resource);
        }
        return record;
    }

    static Bundles published(Bundles record) {
        return taken(record, publish(record));
    }

    static <T extends Resource> Stream<T> all(Bundle bundle, Class<T> type) {
        return bundle.getEntry().stream()
                .map(BundleEntryComponent::getResource)
                .filter(type::isInstance)
                .map(type::cast);
    }

    static Optional<BundleEntryComponent> entry(Bundle bundle, String url) {
        return bundle.getEntry().stream()
                .filter(entry -> entry.getRequest().getUrl().equals(url))
                .findFirst();
    }

    static List<String> urls(Bundle bundle) {
        return bundle.getEntry().stream()
                .map(entry -> entry.getRequest().getUrl())
                .toList();
    }

    static String json(Bundle bundle) {
        return Bundles.FHIR.newJsonParser().encodeResourceToString(bundle);
    }
}
