package org.lensward.board.fhir;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.check.Checkpoint;

/**
 * What {@code $verify-lens} is given.
 *
 * @param bundle booking and data, plan and check so far, the bank's cartons; without it, the record is meant
 * @param booking which booking
 * @param at the checkpoint
 * @param scans what the scanner gave of the carton
 * @param presented what people present there
 */
record VerifyInput(
        Optional<Bundle> bundle,
        Optional<Reference> booking,
        Checkpoint at,
        List<String> scans,
        PresentedParameters presented) {

    private static final String[] PARAMETERS = {
        "bundle",
        "booking",
        "checkpoint",
        "scan",
        "patient-identifier",
        "birth-date",
        "eye",
        "fingerprint",
        "box",
        "package",
        "axis",
        "allergy",
        "no-allergy",
        "back-up",
        "reader",
        "second",
        "at",
        "override",
        "implanted"
    };

    /** Reads Parameters; refuses what it does not know. */
    static VerifyInput read(Resource resource) {
        Given given = Given.of(resource).only(PARAMETERS);
        Optional<Bundle> bundle = given.resource("bundle", Bundle.class);
        Optional<Reference> booking = given.one("booking", Reference.class);
        if (bundle.isEmpty()) {
            given.required("booking", booking);
        }
        return new VerifyInput(
                bundle,
                booking,
                given.required("checkpoint", given.text("checkpoint").map(code -> Checkpoint.of(code)
                        .orElseThrow(() -> given.refused("checkpoint", "is none of the lens check's")))),
                given.texts("scan").toList(),
                new PresentedParameters(given));
    }
}
