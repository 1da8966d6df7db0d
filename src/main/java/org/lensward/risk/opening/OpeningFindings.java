package org.lensward.risk.opening;

import static org.lensward.finding.FindingCode.DYE_ALLERGY_UNCLEAR;
import static org.lensward.finding.FindingCode.DYE_CONCENTRATION_UNUSUAL;
import static org.lensward.finding.FindingCode.DYE_FORBIDDEN;
import static org.lensward.finding.FindingCode.DYE_MAY_STAIN_LENS;
import static org.lensward.finding.FindingCode.DYE_PROTOCOL_MISSING;
import static org.lensward.finding.FindingCode.OPENING_FACTS_UNKNOWN;
import static org.lensward.finding.FindingCode.OPENING_MARGIN_THIN;
import static org.lensward.finding.FindingCode.OPENING_MAY_CONTRACT;
import static org.lensward.finding.FindingCode.OPENING_PLANNED_SMALL;
import static org.lensward.finding.FindingCode.OPENING_TECHNIQUE_MISSING;
import static org.lensward.finding.FindingCode.OPTIC_DIAMETER_UNKNOWN;
import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.lens.LensModel;
import org.lensward.quantity.Percent;

/** What the team has to know of a planned opening. */
final class OpeningFindings {

    /** Far below what any instrument resolves. */
    private static final double SAME = 1e-6;

    private final OpeningPolicy policy;
    private final OpeningSizes sizes;
    private final DyeChoice dyes;

    OpeningFindings(OpeningPolicy policy) {
        this.policy = policy;
        this.sizes = new OpeningSizes(policy);
        this.dyes = new DyeChoice(policy.dye());
    }

    List<Finding> of(
            OpeningCase which, Optional<TechniqueView> chosen, Optional<OpeningSize> size, Optional<DyePlan> dye) {
        List<Finding> found = new ArrayList<>();
        technique(which, chosen, found);
        size.ifPresent(each -> size(which.lens().evidence(), each, found));
        chosen.map(TechniqueView::technique)
                .ifPresent(technique -> size.ifPresentOrElse(
                        each -> contraction(which, technique, each, found), () -> noSize(which.lens(), found)));
        dye.ifPresent(each -> dye(which, each, found));
        // For the laser an unclear allergy already leaves the technique itself open.
        dye.filter(each -> chosen.map(TechniqueView::technique).stream().noneMatch(DYE_LASER_COAGULATION::equals))
                .ifPresent(each -> unclearAllergy(which, each.preparation(), found));
        if (chosen.isPresent() && dye.isEmpty() && which.facts().redReflexLost().yes()) {
            noDye(which, found);
        }
        laserWithoutProtocol(which, found);
        return found;
    }

    private static void technique(OpeningCase which, Optional<TechniqueView> chosen, List<Finding> found) {
        if (chosen.isEmpty()) {
            found.add(Finding.of(OPENING_TECHNIQUE_MISSING, which.person().evidence()));
        } else if (chosen.get().verdict() == Verdict.UNKNOWN) {
            List<Reason> open = chosen.get().reasons().stream()
                    .filter(reason -> reason.bearing() == Bearing.LEAVES_OPEN)
                    .toList();
            found.add(Finding.of(
                    OPENING_FACTS_UNKNOWN,
                    evidence(open, which.person().evidence()),
                    chosen.get().technique(),
                    words(open)));
        }
    }

    private void size(Evidence lens, OpeningSize size, List<Finding> found) {
        Overlap overlap = size.asMade();
        if (overlap.least().value() < policy.thinOverlap().value().value() - SAME) {
            found.add(Finding.of(
                    OPENING_MARGIN_THIN,
                    lens,
                    size.diameter().rounded(),
                    overlap.optic().rounded(),
                    overlap.decentration().rounded(),
                    overlap.least().rounded(),
                    policy.thinOverlap().value().rounded()));
        }
        if (size.diameter().value() < policy.smallest().value().value() - SAME) {
            found.add(Finding.of(
                    OPENING_PLANNED_SMALL,
                    lens,
                    overlap.optic().rounded(),
                    size.diameter().rounded(),
                    policy.smallest().value().rounded()));
        }
    }

    private void contraction(OpeningCase which, OpeningTechnique technique, OpeningSize size, List<Finding> found) {
        sizes.contractor(technique, which.eye().history())
                .ifPresent(sign -> found.add(Finding.of(
                        OPENING_MAY_CONTRACT,
                        which.facts().any(sign).evidence(),
                        which.facts().any(sign).words(),
                        size.areaLost(),
                        policy.of(technique).contraction().value(),
                        size.diameter().rounded(),
                        size.capped() ? ", no wider for the overlap's sake," : "",
                        size.healed().rounded())));
    }

    private void dye(OpeningCase which, DyePlan dye, List<Finding> found) {
        DyePreparation preparation = dye.preparation();
        dye.protocol().ifPresent(protocol -> {
            DyeRange range = policy.dye().range(preparation);
            found.add(Finding.of(
                    DYE_CONCENTRATION_UNUSUAL,
                    which.person().evidence(),
                    preparation,
                    range.least().value(),
                    range.most().value(),
                    dye.timesUsual().value(),
                    range.usual().value(),
                    protocol));
        });
        if (DyeChoice.stains(which)) {
            found.add(Finding.of(
                    DYE_MAY_STAIN_LENS,
                    which.lens().evidence(),
                    preparation,
                    which.lens().name()));
        }
    }

    private void unclearAllergy(OpeningCase which, DyePreparation preparation, List<Finding> found) {
        List<Reason> unclear = dyes.reasons(preparation, which).stream()
                .filter(reason -> reason.bearing() == Bearing.LEAVES_OPEN)
                .toList();
        if (!unclear.isEmpty()) {
            found.add(Finding.of(
                    DYE_ALLERGY_UNCLEAR, evidence(unclear, which.person().evidence()), preparation, words(unclear)));
        }
    }

    private void noDye(OpeningCase which, List<Finding> found) {
        List<Reason> against = policy.dye().forSight().stream()
                .flatMap(each -> dyes.reasons(each, which).stream())
                .filter(reason -> reason.bearing() == Bearing.FORBIDS)
                .toList();
        found.add(Finding.of(
                DYE_FORBIDDEN,
                evidence(against, which.person().evidence()),
                which.facts().redReflexLost().words(),
                against.isEmpty() ? "the policy names none" : words(against)));
    }

    private void laserWithoutProtocol(OpeningCase which, List<Finding> found) {
        DyePreparation preparation = policy.dye().forLaser();
        boolean atHand = policy.of(DYE_LASER_COAGULATION).atHand();
        if (atHand
                && policy.dye().unusual(preparation)
                && policy.dye().protocol(preparation).isEmpty()) {
            Percent concentration = preparation.concentration().value();
            DyeRange range = policy.dye().range(preparation);
            found.add(Finding.of(
                    DYE_PROTOCOL_MISSING,
                    which.person().evidence(),
                    preparation,
                    range.timesUsual(concentration).value(),
                    range.usual().value()));
        }
    }

    private static void noSize(LensModel lens, List<Finding> found) {
        found.add(Finding.of(OPTIC_DIAMETER_UNKNOWN, lens.evidence(), lens.name()));
    }

    private static String words(List<Reason> reasons) {
        return reasons.stream().map(Reason::words).distinct().collect(Collectors.joining("; "));
    }

    private static List<Evidence> evidence(List<Reason> reasons, Evidence otherwise) {
        List<Evidence> evidence = reasons.stream()
                .flatMap(reason -> reason.evidence().stream())
                .distinct()
                .toList();
        return evidence.isEmpty() ? List.of(otherwise) : evidence;
    }
}
