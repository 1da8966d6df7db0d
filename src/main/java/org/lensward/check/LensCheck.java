package org.lensward.check;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Compares what people present at a checkpoint with what the plan expects. Source of what is compared: the causes of wrong lenses in Kelly
 * and Jalil, Eye 2011, and Steeples et al., Eye 2016.
 */
public final class LensCheck {

    private static final List<Function<Situation, Stream<Difference>>> COMPARISONS = List.of(
            PatientComparison::of,
            EyeComparison::of,
            PlanComparison::of,
            LensComparison::of,
            CartonComparison::of,
            TheatreComparison::of);

    private LensCheck() {}

    /** Passed only if everything asked for at that checkpoint is stated and as expected; else every difference. */
    public static CheckResult compare(Checkpoint at, Expected expected, Presented presented, CheckPolicy policy) {
        Situation here = new Situation(at, expected, presented, policy);
        return CheckResult.of(
                COMPARISONS.stream().flatMap(each -> each.apply(here)).toList());
    }
}
