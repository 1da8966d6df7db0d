package org.lensward.board.cds;

import java.util.List;
import java.util.Map;

/**
 * A service as discovery shows it (CDS Hooks 2.0, discovery).
 *
 * @param hook when it is called
 * @param title its name for people
 * @param description what it says
 * @param id the last part of its address
 * @param prefetch what to send with a call: key to FHIR query
 */
record ServiceDescription(String hook, String title, String description, String id, Map<String, String> prefetch) {

    /**
     * The answer of discovery.
     *
     * @param services all of ours
     */
    record Services(List<ServiceDescription> services) {}
}
