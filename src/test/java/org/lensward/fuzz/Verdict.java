package org.lensward.fuzz;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.lens.KitLens;
import org.lensward.plan.EyePlan;
import org.lensward.plan.PlanState;
import org.lensward.record.site.SitePlanning.Planned;

/**
 * Whether a plan rests silently on a changed measurement. It does not if one of these holds:
 *
 * <ol>
 *   <li>it is withheld, or no plan is made; or that before was withheld, and what it lacked was put in;
 *   <li>it proposes the very lenses it proposed before, since what was changed had no part in them or another trustworthy measurement
 *       stands in its place;
 *   <li>a finding that was not there before says that a measurement is missing;
 *   <li>it no longer names the changed measurement in its basis, and a finding that was not there before says what that changes;
 *   <li>a finding that was not there before names the changed measurement.
 * </ol>
 *
 * Anything else is a plan of other lenses on a measurement nobody took, without a word.
 */
final class Verdict {

    private Verdict() {}

    static Optional<String> of(List<Planned> sound, Planned spoiled, Mutant mutant) {
        EyePlan after = spoiled.plan();
        if (mutant.changed().isEmpty() || after.state() == PlanState.WITHHELD) {
            return Optional.empty();
        }
        String changed = mutant.changed().get();
        EyePlan before = sound.stream()
                .map(Planned::plan)
                .filter(each -> each.booking()
                        .evidence()
                        .resource()
                        .equals(after.booking().evidence().resource()))
                .findFirst()
                .orElseThrow();
        if (before.state() == PlanState.WITHHELD || lenses(before).equals(lenses(after))) {
            return Optional.empty();
        }
        Set<String> fresh = new HashSet<>(said(after));
        fresh.removeAll(said(before));
        boolean named = after.findings().stream()
                .filter(each -> fresh.contains(said(each)))
                .flatMap(each -> each.evidence().stream())
                .map(Evidence::resource)
                .anyMatch(changed::equals);
        boolean missing = fresh.stream().anyMatch(each -> each.matches("[a-z-]+-missing: .*"));
        boolean leftOut = after.basis().stream().map(Evidence::resource).noneMatch(changed::equals);
        return named || missing || leftOut && !fresh.isEmpty()
                ? Optional.empty()
                : Optional.of(mutant + ": " + lenses(before) + " became " + lenses(after) + ", said " + fresh);
    }

    private static String lenses(EyePlan plan) {
        return plan.lens()
                .map(each -> each.kit().all().stream().map(Verdict::lens).collect(Collectors.joining(", ")))
                .orElse("none");
    }

    private static String lens(KitLens lens) {
        return lens.role() + " " + lens.model().evidence().resource() + " " + lens.power();
    }

    private static Set<String> said(EyePlan plan) {
        return plan.findings().stream().map(Verdict::said).collect(Collectors.toSet());
    }

    private static String said(Finding finding) {
        return finding.code().code() + ": " + finding.message();
    }
}
