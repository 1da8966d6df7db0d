package org.lensward.risk.preparation;

import java.util.List;
import org.lensward.finding.Finding;

/**
 * How one eye and its owner are prepared.
 *
 * @param precautions in the order of their topics
 * @param anaesthetic chosen, undecided or none left
 * @param agents chosen for each purpose that came up, with those passed over
 * @param nucleus each way of taking the nucleus apart
 * @param lensTypes each kind of lens the hospital offers
 * @param findings what changes the plan; it is provisional while one of them is a condition
 */
public record Preparation(
        List<Precaution> precautions,
        AnaestheticChoice anaesthetic,
        List<AgentChoice> agents,
        List<NucleusOption> nucleus,
        List<Suitability> lensTypes,
        List<Finding> findings) {

    public Preparation {
        precautions = List.copyOf(precautions);
        agents = List.copyOf(agents);
        nucleus = List.copyOf(nucleus);
        lensTypes = List.copyOf(lensTypes);
        findings = List.copyOf(findings);
    }

    /** What has to lie ready for the precautions, each thing once; lenses and the capsule opening add their own. */
    public BringList bring() {
        return BringList.ofEye(
                precautions.stream().flatMap(each -> each.bring().stream()).toList());
    }

    /** Everything that somebody still has to find out, in the order of the topics. */
    public List<String> unknown() {
        return precautions.stream()
                .flatMap(each -> each.unknown().stream())
                .distinct()
                .toList();
    }
}
