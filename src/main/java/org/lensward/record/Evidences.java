package org.lensward.record;

import ca.uhn.fhir.context.FhirContext;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.finding.Evidence;

/** Names resources as evidence: by the version the server gave them, or by their content where there is none. */
public final class Evidences {

    private static final String DIGEST = "sha256-";
    private static final String IDENTITY = "identity-";

    private final FhirContext fhir;

    Evidences(FhirContext fhir) {
        this.fhir = fhir;
    }

    Evidence of(Resource resource, String field) {
        return new Evidence(Shelf.name(resource), version(resource), field);
    }

    private String version(Resource resource) {
        String given = resource.getMeta().getVersionId();
        return given != null ? given : DIGEST + digest(fhir.newJsonParser().encodeResourceToString(resource));
    }

    /** Who the patient is, in place of a version: a new address is no reason to plan again, a new birth date is. */
    static Evidence ofIdentity(Resource patient, String identity) {
        return new Evidence(Shelf.name(patient), IDENTITY + digest(identity), "");
    }

    /** Whether the version is the server's own, so that it can be fetched. */
    static boolean isOfServer(Evidence evidence) {
        return !evidence.version().startsWith(DIGEST) && !evidence.version().startsWith(IDENTITY);
    }

    /** 24 hexadecimal digits that stand for a text. */
    public static String digest(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest).substring(0, 24);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java platform has SHA-256", impossible);
        }
    }
}
