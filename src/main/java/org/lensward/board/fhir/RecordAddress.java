package org.lensward.board.fhir;

import java.net.URI;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Reference;

/**
 * Where the record is.
 *
 * @param url its base address
 */
record RecordAddress(URI url) {

    private static final Pattern NAME = Pattern.compile("[A-Z][A-Za-z]+/[A-Za-z0-9\\-.]{1,64}");

    /** Whether the reference is to a resource of the record; a relative one is. */
    boolean holds(Reference reference) {
        return !reference.getReferenceElement().isAbsolute()
                || bare(reference.getReferenceElement().getBaseUrl()).equals(base());
    }

    /** The transaction with the address that each resource has in the record (FHIR R4, Bundle, "Resource URL and uniqueness rules"). */
    Bundle addressed(Bundle transaction) {
        Bundle copy = transaction.copy();
        copy.getEntry().stream()
                .filter(entry -> NAME.matcher(entry.getRequest().getUrl()).matches())
                .forEach(entry ->
                        entry.setFullUrl(base() + "/" + entry.getRequest().getUrl()));
        return copy;
    }

    private String base() {
        return bare(url.toString());
    }

    private static String bare(String url) {
        return url.replaceAll("/+$", "");
    }
}
