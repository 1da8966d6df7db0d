package org.lensward.board.eye;

import java.util.List;
import java.util.stream.Stream;
import org.lensward.finding.Finding;
import org.lensward.finding.Severity;

/**
 * What was found, as far as it reaches equally into the plan.
 *
 * @param severity how far
 * @param words as a heading
 * @param findings each with its remedy
 */
record FindingGroup(Severity severity, String words, List<Found> findings) {

    /**
     * One finding.
     *
     * @param message with this eye's particulars
     * @param remedy what a person does about it
     * @param where its evidence
     */
    record Found(String message, String remedy, List<Shown> where) {

        static Found of(Finding finding) {
            return new Found(
                    finding.message(),
                    finding.remedy(),
                    finding.evidence().stream()
                            .map(each -> Shown.of(each.toString(), each))
                            .distinct()
                            .toList());
        }
    }

    /** The groups that have findings, gravest first. */
    static List<FindingGroup> of(List<Finding> findings) {
        return Stream.of(Severity.values())
                .map(severity -> new FindingGroup(
                        severity,
                        words(severity),
                        findings.stream()
                                .filter(each -> each.severity() == severity)
                                .map(Found::of)
                                .toList()))
                .filter(group -> !group.findings().isEmpty())
                .toList();
    }

    private static String words(Severity severity) {
        return switch (severity) {
            case WITHHOLDS -> "Why no lens is proposed";
            case CONDITION -> "To settle before the operation";
            case CAUTION -> "Prepare for";
            case NOTE -> "Worth knowing";
        };
    }
}
