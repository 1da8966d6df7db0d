package org.lensward.risk.preparation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Limit;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Millimetres;
import org.lensward.risk.preparation.AnaestheticChoice.Chosen;
import org.lensward.risk.preparation.AnaestheticChoice.NoneLeft;
import org.lensward.risk.preparation.AnaestheticChoice.Refused;
import org.lensward.risk.preparation.AnaestheticChoice.Undecided;
import org.lensward.risk.preparation.AnaestheticRule.LongEye;

/**
 * The first anaesthetic in the policy's order that nothing recorded refuses. Where a fact that would refuse it is unknown, the
 * choice is undecided: a later one is not taken on a guess, nor the first on a hope.
 */
final class AnaestheticPlanner {

    private final AnaestheticPolicy policy;

    AnaestheticPlanner(AnaestheticPolicy policy) {
        this.policy = policy;
    }

    AnaestheticChoice choose(Sheet sheet) {
        List<Refused> refused = new ArrayList<>();
        for (AnaestheticRule rule : policy.inOrder()) {
            Refused refusal = refusal(rule, sheet);
            if (refusal.reasons().isEmpty()) {
                List<String> unknown = deciding(rule, sheet.facts());
                return unknown.isEmpty()
                        ? new Chosen(rule.kind(), refused)
                        : new Undecided(rule.kind(), unknown, refused);
            }
            refused.add(refusal);
        }
        return new NoneLeft(refused);
    }

    private Refused refusal(AnaestheticRule rule, Sheet sheet) {
        List<String> reasons = new ArrayList<>();
        List<Evidence> evidence = new ArrayList<>();
        for (var signs : List.of(rule.refusedBy(), rule.avoidedBy())) {
            sheet.facts().affirmed(signs).forEach(entry -> {
                reasons.add(entry.words());
                evidence.add(entry.evidence());
            });
        }
        if (rule.longEye() != LongEye.ALLOWS) {
            sheet.facts().length().filter(this::isLong).ifPresent(length -> {
                reasons.add("axial length " + Figures.of(length.value()) + " above "
                        + Figures.of(longEye().value()));
                evidence.add(length.evidence());
            });
        }
        rule.kind()
                .agent()
                .map(sheet::consider)
                .filter(choice -> choice.agent().isEmpty())
                .ifPresent(choice -> {
                    reasons.add("no " + choice.purpose() + " suits this patient");
                    evidence.addAll(choice.evidence());
                });
        return new Refused(rule.kind(), reasons, evidence);
    }

    private boolean isLong(Measured<Millimetres> length) {
        return length.value().compareTo(longEye().value()) > 0;
    }

    private Limit<Millimetres> longEye() {
        return policy.longEye();
    }

    /** Unknown facts that would refuse it. */
    private static List<String> deciding(AnaestheticRule rule, Facts facts) {
        List<String> unknown = new ArrayList<>();
        facts.unknown(rule.refusedBy()).forEach(sign -> unknown.add(Question.about(sign)));
        if (rule.longEye() == LongEye.REFUSES && facts.length().isEmpty()) {
            unknown.add("axial length");
        }
        return unknown;
    }

    /** Unknown facts that would make another one better. */
    List<String> weighing(Anaesthetic kind, Facts facts) {
        List<String> unknown = new ArrayList<>();
        Optional<AnaestheticRule> rule =
                policy.inOrder().stream().filter(each -> each.kind() == kind).findFirst();
        rule.ifPresent(each -> {
            facts.unknown(each.avoidedBy()).forEach(sign -> unknown.add(Question.about(sign)));
            if (each.longEye() == LongEye.AVOIDS && facts.length().isEmpty()) {
                unknown.add("axial length");
            }
        });
        return unknown;
    }

    String source(Anaesthetic kind) {
        return policy.inOrder().stream()
                .filter(each -> each.kind() == kind)
                .map(AnaestheticRule::source)
                .findFirst()
                .orElse("the hospital's policy");
    }
}
