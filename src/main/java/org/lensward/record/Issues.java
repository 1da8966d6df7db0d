package org.lensward.record;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DetectedIssue.DetectedIssueSeverity;
import org.hl7.fhir.r4.model.DetectedIssue.DetectedIssueStatus;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** Findings as DetectedIssues: what, how grave, where it stands, and the remedy. */
final class Issues {

    private static final String SEVERITY = Systems.extension("finding-severity");

    private Issues() {}

    static List<DetectedIssue> of(PlanContext context, List<Finding> findings) {
        Map<FindingCode, Integer> counts = new EnumMap<>(FindingCode.class);
        List<DetectedIssue> issues = new ArrayList<>();
        for (Finding finding : findings) {
            int count = counts.merge(finding.code(), 1, Integer::sum);
            String part = finding.code().code() + (count == 1 ? "" : "-" + count);
            issues.add(issue(context, finding, context.key().id(part)));
        }
        return issues;
    }

    private static DetectedIssue issue(PlanContext context, Finding finding, String id) {
        DetectedIssue issue = new DetectedIssue();
        issue.setId(id);
        issue.getMeta().addProfile(Systems.profile("finding"));
        issue.addExtension(PlanResources.EYE, context.eye());
        issue.addExtension(SEVERITY, new CodeType(finding.severity().name().toLowerCase(Locale.ROOT)));
        issue.addIdentifier(context.key().identifier());
        issue.setStatus(DetectedIssueStatus.PRELIMINARY);
        issue.setCode(Codes.concept(Systems.FINDING, finding.code().code(), display(finding.code())));
        issue.setSeverity(severity(finding));
        issue.setPatient(context.patient());
        issue.setImplicated(PlanContext.references(finding.evidence()));
        for (Evidence evidence : finding.evidence()) {
            DetectedIssue.DetectedIssueEvidenceComponent shown = issue.addEvidence();
            shown.addDetail(new Reference(evidence.resource()));
            if (!evidence.field().isEmpty()) {
                shown.addCode(new CodeableConcept().setText(evidence.toString()));
            }
        }
        issue.setDetail(finding.message());
        issue.addMitigation().setAction(new CodeableConcept().setText(finding.remedy()));
        return issue;
    }

    /** The place of the issue's code among the codes: causes are declared before what follows from them. */
    static int rank(DetectedIssue issue) {
        String code = Codes.in(issue.getCode(), Systems.FINDING).orElse("");
        return Stream.of(FindingCode.values())
                .filter(each -> each.code().equals(code))
                .map(FindingCode::ordinal)
                .findFirst()
                .orElse(Integer.MAX_VALUE);
    }

    static String display(FindingCode code) {
        String words = code.name().toLowerCase(Locale.ROOT).replace('_', ' ');
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static DetectedIssueSeverity severity(Finding finding) {
        return switch (finding.severity()) {
            case WITHHOLDS -> DetectedIssueSeverity.HIGH;
            case CONDITION -> DetectedIssueSeverity.MODERATE;
            case CAUTION, NOTE -> DetectedIssueSeverity.LOW;
        };
    }
}
