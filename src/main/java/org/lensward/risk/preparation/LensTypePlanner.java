package org.lensward.risk.preparation;

import static org.lensward.finding.FindingCode.LENS_TYPE_DOUBTFUL;
import static org.lensward.finding.FindingCode.LENS_TYPE_UNSUITABLE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.eye.Keratometry;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.lens.LensModel;

/** Which kinds of lens suit this eye, and whether the planned one does. */
final class LensTypePlanner {

    private final LensTypePolicy policy;

    LensTypePlanner(LensTypePolicy policy) {
        this.policy = policy;
    }

    List<Suitability> judge(Facts facts) {
        return policy.rules().stream()
                .map(rule -> new Suitability(rule.type(), judge(rule, facts), rule.source()))
                .toList();
    }

    private Judgement judge(LensTypeRule rule, Facts facts) {
        Weighing weighing = new Weighing().forbid(facts, rule.refusedBy()).doubt(facts, rule.doubtedBy());
        if (rule.needsBag()) {
            bag(weighing, facts);
        }
        if (rule.type() == LensType.TORIC) {
            cornea(weighing, facts);
        }
        return weighing.judgement();
    }

    private void bag(Weighing weighing, Facts facts) {
        ZonuleCare.lost(facts).ifPresent(hours -> weighing.forbid(ZonuleCare.words(hours), hours.evidence()));
        facts.examination()
                .openingDecentration()
                .filter(off -> off.value().compareTo(policy.decentredOpening().value()) > 0)
                .ifPresent(off ->
                        weighing.doubt("capsule opening decentred by " + Figures.of(off.value()), off.evidence()));
    }

    private void cornea(Weighing weighing, Facts facts) {
        facts.eye()
                .biometry()
                .ifPresentOrElse(
                        biometry -> astigmatism(weighing, biometry.keratometry()), () -> weighing.ask("keratometry"));
        facts.eye()
                .other()
                .cornealScatter()
                .filter(scatter ->
                        scatter.value().compareTo(policy.cornealScatter().value()) > 0)
                .ifPresent(scatter -> weighing.doubt(
                        "keratometer readings scatter by " + Figures.of(scatter.value()), scatter.evidence()));
    }

    private void astigmatism(Weighing weighing, Measured<Keratometry> cornea) {
        var cylinder = cornea.value().astigmatism();
        if (cylinder.compareTo(policy.toricAstigmatism().value()) < 0) {
            weighing.forbid(
                    "corneal astigmatism " + Figures.of(cylinder) + " below "
                            + Figures.of(policy.toricAstigmatism().value()),
                    cornea.evidence());
        } else if (cornea.value().steepMeridian().isEmpty()) {
            weighing.ask("steep meridian of the cornea");
        }
    }

    /** What there is to say of the lens that is planned. */
    static List<Finding> check(LensModel planned, List<Suitability> suitabilities) {
        return suitabilities.stream()
                .filter(each -> types(planned).anyMatch(type -> type == each.type()))
                .flatMap(each -> finding(planned, each).stream())
                .toList();
    }

    private static Stream<LensType> types(LensModel planned) {
        Stream<LensType> focus = planned.design().focus().stream().map(each -> switch (each) {
            case MONOFOCAL -> LensType.MONOFOCAL;
            case EXTENDED -> LensType.EXTENDED_FOCUS;
            case MULTIFOCAL -> LensType.MULTIFOCAL;
        });
        return planned.isToric() ? Stream.concat(focus, Stream.of(LensType.TORIC)) : focus;
    }

    private static Optional<Finding> finding(LensModel planned, Suitability suitability) {
        Judgement judgement = suitability.judgement();
        List<Evidence> evidence = new ArrayList<>(List.of(planned.evidence()));
        evidence.addAll(judgement.evidence());
        String reasons = String.join(", ", judgement.reasons());
        String unknown = judgement.unknown().isEmpty() ? "" : "unknown: " + String.join("; ", judgement.unknown());
        return switch (judgement.verdict()) {
            case SUITS -> Optional.empty();
            case DOES_NOT_SUIT -> Optional.of(Finding.of(LENS_TYPE_UNSUITABLE, evidence, suitability.type(), reasons));
            case DOUBTFUL, UNKNOWN ->
                Optional.of(Finding.of(
                        LENS_TYPE_DOUBTFUL,
                        evidence,
                        suitability.type(),
                        Stream.of(reasons, unknown)
                                .filter(words -> !words.isEmpty())
                                .collect(Collectors.joining("; "))));
        };
    }
}
