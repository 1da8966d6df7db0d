package org.lensward.finding;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Something in the record, or missing from it, that changes the plan.
 *
 * @param code what was found
 * @param message the code's message with this eye's particulars
 * @param evidence where it stands in the record; never empty
 */
public record Finding(FindingCode code, String message, List<Evidence> evidence) {

    public Finding {
        evidence = List.copyOf(evidence);
        if (evidence.isEmpty()) {
            throw new IllegalArgumentException("A finding shows its evidence: " + code);
        }
    }

    /** A finding whose message is filled from the code's template. */
    public static Finding of(FindingCode code, List<Evidence> evidence, Object... particulars) {
        return new Finding(code, String.format(Locale.ROOT, code.template(), particulars), evidence);
    }

    /** A finding with one piece of evidence. */
    public static Finding of(FindingCode code, Evidence evidence, Object... particulars) {
        return of(code, List.of(evidence), particulars);
    }

    public Severity severity() {
        return code.severity();
    }

    public String remedy() {
        return code.remedy();
    }

    /** Whether any of these findings forbids proposing a lens. */
    public static boolean withhold(Stream<Finding> findings) {
        return findings.anyMatch(finding -> finding.severity() == Severity.WITHHOLDS);
    }
}
