package org.lensward.board.cds;

import java.util.List;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.lensward.finding.Finding;
import org.lensward.record.Codes;

/**
 * Why a plan is as it is, and what to do.
 *
 * @param message what was found
 * @param remedy what settles it
 */
record Reason(String message, String remedy) {

    private static final int SHOWN = 5;

    static Reason of(Finding finding) {
        return new Reason(finding.message(), finding.remedy());
    }

    static Reason of(DetectedIssue issue) {
        return new Reason(
                issue.hasDetail() ? issue.getDetail() : Codes.words(issue.getCode()),
                issue.getMitigation().stream()
                        .map(each -> Codes.words(each.getAction()))
                        .collect(Collectors.joining(" ")));
    }

    /** The first few in Markdown, and how many more there are. */
    static String list(List<Reason> reasons) {
        String first = reasons.stream().limit(SHOWN).map(Reason::markdown).collect(Collectors.joining("\n"));
        return reasons.size() <= SHOWN ? first : first + "\n- and " + (reasons.size() - SHOWN) + " more";
    }

    private String markdown() {
        return "- **" + plain(message) + "** " + plain(remedy);
    }

    /** What the record says is shown as it stands, never as markup. */
    static String plain(String text) {
        return text.replaceAll("\\s+", " ").replaceAll("([\\\\`*_\\[\\]<>#|~])", "\\\\$1");
    }
}
