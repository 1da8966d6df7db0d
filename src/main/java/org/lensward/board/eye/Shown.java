package org.lensward.board.eye;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Quantity;
import org.lensward.record.Evidences;

/**
 * Something on the page and where it stands in the record.
 *
 * @param words as the page says it
 * @param where the page that shows it in the record
 */
record Shown(String words, String where) {

    static Shown of(String words, Evidence evidence) {
        return new Shown(words, where(evidence));
    }

    static Shown of(Measured<? extends Quantity> measured) {
        return of(measured.value().rounded(), measured.evidence());
    }

    /** The version that was read, where the server can give it again; else the resource as it stands. */
    static String where(Evidence evidence) {
        boolean kept = Evidences.isOfServer(evidence) && !evidence.version().isEmpty();
        String version = kept ? "/_history/" + evidence.version() : "";
        String element = evidence.field().isEmpty()
                ? ""
                : "?element=" + URLEncoder.encode(evidence.field(), StandardCharsets.UTF_8);
        return "/evidence/" + evidence.resource() + version + element;
    }
}
