package org.lensward.record;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;

/** The resources of a Bundle, found by type or by reference, whatever way the reference is written. */
public final class Shelf {

    private final Map<String, Resource> byReference = new LinkedHashMap<>();

    /** Shelves every resource of the bundle, those of nested bundles too; the last of two with one id stands. */
    public Shelf(Bundle bundle) {
        shelve(bundle);
    }

    private void shelve(Bundle bundle) {
        for (BundleEntryComponent entry : bundle.getEntry()) {
            if (entry.getResource() instanceof Bundle nested) {
                shelve(nested);
            } else if (entry.hasResource() && entry.getResource().getIdElement().hasIdPart()) {
                byReference.put(name(entry.getResource()), entry.getResource());
            }
        }
    }

    /** The name the resource is referred to by: {@code Patient/p1}, or its {@code urn:uuid:}. */
    public static String name(Resource resource) {
        String id = resource.getIdElement().getValue();
        return id.startsWith("urn:")
                ? id
                : resource.fhirType() + "/" + resource.getIdElement().getIdPart();
    }

    /** The name with the version the server gave it. */
    public static String versionedName(Resource resource) {
        return name(resource) + "/_history/" + resource.getMeta().getVersionId();
    }

    /** The same for a reference: without server, without version. */
    public static String name(Reference reference) {
        String text = reference.getReference();
        if (text == null) {
            return "";
        }
        String name = text.startsWith("urn:")
                ? text
                : reference.getReferenceElement().toUnqualifiedVersionless().getValue();
        return name == null ? "" : name;
    }

    /** Every resource of that type, in the order of the bundle. */
    public <T extends Resource> Stream<T> all(Class<T> type) {
        return byReference.values().stream().filter(type::isInstance).map(type::cast);
    }

    /** What the reference points to, if it is here and of that type. */
    public <T extends Resource> Optional<T> find(Class<T> type, Reference reference) {
        return Optional.ofNullable(byReference.get(name(reference)))
                .filter(type::isInstance)
                .map(type::cast);
    }

    /** Whether any of the references points to that resource. */
    public static boolean refers(List<Reference> references, Resource resource) {
        String name = name(resource);
        return references.stream().anyMatch(reference -> name(reference).equals(name));
    }
}
