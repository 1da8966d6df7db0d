package org.lensward.finding;

import java.util.Comparator;

/**
 * Where in the record something stands.
 *
 * @param resource type and id, such as {@code Observation/al-1}
 * @param version the version read: the server's, or a hash of the content where the server gave none
 * @param field the element inside the resource, such as {@code valueQuantity.code}; empty for the whole resource
 */
public record Evidence(String resource, String version, String field) implements Comparable<Evidence> {

    private static final Comparator<Evidence> ORDER = Comparator.comparing(Evidence::resource)
            .thenComparing(Evidence::version)
            .thenComparing(Evidence::field);

    public Evidence {
        if (resource.isBlank()) {
            throw new IllegalArgumentException("Evidence names a resource");
        }
    }

    /** The same resource, another element of it. */
    public Evidence at(String otherField) {
        return new Evidence(resource, version, otherField);
    }

    @Override
    public int compareTo(Evidence other) {
        return ORDER.compare(this, other);
    }

    @Override
    public String toString() {
        return field.isEmpty() ? resource : resource + "." + field;
    }
}
