package org.lensward.record;

import ca.uhn.fhir.context.FhirContext;

/** FHIR R4 as we speak it. */
public final class Fhir {

    private Fhir() {}

    /** A context that keeps the versions of the sources a trail names; costly to make, so make one. */
    public static FhirContext r4() {
        FhirContext fhir = FhirContext.forR4();
        fhir.getParserOptions().setDontStripVersionsFromReferencesAtPaths("Provenance.entity.what");
        return fhir;
    }
}
