package org.lensward.risk.opening;

import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import org.lensward.eye.History;
import org.lensward.eye.Limit;
import org.lensward.eye.Sign;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Percent;

/**
 * The diameter to plan: the technique's preferred one for this optic, made wider where this eye's capsule contracts more, never so wide
 * that the technique's least overlap is lost at the decentration to be expected of it.
 *
 * <pre>
 * d  = preferred - (reference optic - optic)         the same rim for every optic
 * d0 = d sqrt(1 - f usual) / sqrt(1 - f)             ends as wide as in the usual eye
 * d0 &lt;= optic - 2 (least overlap + decentration)
 * </pre>
 *
 * <p>f is the share of its area that the opening loses as it heals.
 */
final class OpeningSizes {

    /** Diameters are planned in steps of 0.05 mm, downwards: finer than a hand keeps. Common practice, no source. */
    private static final double STEPS_PER_MILLIMETRE = 20;

    private static final double ROUNDING = 1e-6;

    private final OpeningPolicy policy;

    OpeningSizes(OpeningPolicy policy) {
        this.policy = policy;
    }

    /** Nothing where the optic's diameter is not known, or is no optic's. */
    Optional<OpeningSize> plan(OpeningTechnique technique, OpeningCase which) {
        Percent lost = areaLost(technique, which.eye().history());
        return which.lens()
                .opticDiameter()
                .filter(optic -> preferred(technique, optic) > 0 && widest(technique, optic) > 0)
                .map(optic -> size(technique, optic, lost));
    }

    /** The sign whose contraction is the greatest of this eye's and more than the technique's own. */
    Optional<Sign> contractor(OpeningTechnique technique, History history) {
        Percent usual = policy.of(technique).contraction().value();
        return policy.contraction().entrySet().stream()
                .filter(each -> history.affirmed(each.getKey()).isPresent())
                .filter(each -> each.getValue().value().compareTo(usual) > 0)
                .max(Comparator.comparing((Map.Entry<Sign, Limit<Percent>> each) ->
                                each.getValue().value())
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey);
    }

    private Percent areaLost(OpeningTechnique technique, History history) {
        return contractor(technique, history)
                .flatMap(sign -> Optional.ofNullable(policy.contraction().get(sign)))
                .orElse(policy.of(technique).contraction())
                .value();
    }

    private OpeningSize size(OpeningTechnique technique, Millimetres optic, Percent lost) {
        double usual = left(policy.of(technique).contraction().value());
        double wanted = preferred(technique, optic) * usual / left(lost);
        double widest = widest(technique, optic);
        double step = 1 / STEPS_PER_MILLIMETRE;
        double made = Math.max(
                step, Math.floor(Math.min(wanted, widest) * STEPS_PER_MILLIMETRE + ROUNDING) / STEPS_PER_MILLIMETRE);
        Overlap overlap = new Overlap(
                optic, Millimetres.of(made), policy.of(technique).decentration().value());
        return new OpeningSize(overlap, Millimetres.of(made * left(lost)), lost, wanted > widest + ROUNDING);
    }

    private double preferred(OpeningTechnique technique, Millimetres optic) {
        Millimetres smallerBy = policy.referenceOptic().value().minus(optic);
        return policy.of(technique).preferred().value().minus(smallerBy).value();
    }

    private double widest(OpeningTechnique technique, Millimetres optic) {
        TechniquePolicy own = policy.of(technique);
        Millimetres rim = own.leastOverlap().value().plus(own.decentration().value());
        return optic.minus(rim).minus(rim).value();
    }

    /** What is left of a diameter whose circle loses that share of its area. */
    private static double left(Percent lost) {
        return Math.sqrt(1 - lost.value() / 100);
    }
}
