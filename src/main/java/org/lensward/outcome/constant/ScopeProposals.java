package org.lensward.outcome.constant;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.random.RandomGenerator;
import org.lensward.optics.FormulaName;
import org.lensward.outcome.OutcomePolicy.LearningPolicy;
import org.lensward.outcome.constant.HaigisSums.Three;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;

/** The proposals of one scope: each constant fitted to all its eyes and to samples of them. */
final class ScopeProposals {

    private static final List<Aim> AIMS = List.of(Aim.ZERO_MEAN, Aim.LEAST_DEVIATION, Aim.LEAST_SQUARES);

    /** Samples of fewer eyes repeat each other too often to say anything (common practice, no source). */
    private static final long FEWEST = 10;

    /** A fit that fails in more samples than this stands on too few eyes. */
    private static final double MOST_FAILED = 0.05;

    private final Scope scope;
    private final ScopeTally tally;
    private final LearningPolicy policy;
    private final RealVector total;

    ScopeProposals(Scope scope, ScopeTally tally, LearningPolicy policy) {
        this.scope = scope;
        this.tally = tally;
        this.policy = policy;
        this.total = tally.blocks().total(tally.blocks().filled());
    }

    List<Proposal> all(RandomGenerator random) {
        if (ScopeTally.FORMULAS.stream().noneMatch(formula -> total.getEntry(ScopeTally.place(formula)) >= FEWEST)) {
            return List.of();
        }
        List<RealVector> samples = Stream.generate(
                        () -> tally.blocks().total(tally.blocks().drawn(random)))
                .limit((long) policy.replicates().value().value())
                .toList();
        List<Proposal> proposals = new ArrayList<>();
        for (FormulaName formula : ScopeTally.FORMULAS) {
            errors(total, formula).filter(each -> each.eyes() >= FEWEST).ifPresent(errors -> {
                AIMS.forEach(aim -> one(formula, aim, errors, samples).ifPresent(proposals::add));
                if (formula == FormulaName.HAIGIS) {
                    three(errors, samples).ifPresent(proposals::add);
                }
            });
        }
        return proposals;
    }

    private static Optional<PositionErrors> errors(RealVector sums, FormulaName formula) {
        return PositionErrors.of(sums, ScopeTally.place(formula));
    }

    private Optional<Proposal> one(FormulaName formula, Aim aim, PositionErrors errors, List<RealVector> samples) {
        OptionalDouble best = errors.best(aim);
        double[] drawn = samples.stream()
                .flatMap(sample -> errors(sample, formula).stream())
                .map(sample -> sample.best(aim))
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .toArray();
        if (best.isEmpty() || tooFew(drawn.length, samples.size())) {
            return Optional.empty();
        }
        double position = best.getAsDouble();
        OneConstant constant = new OneConstant(formula, tally.inUse());
        double weight = Shrinkage.weight(drawn, policy.betweenSurgeons().value());
        double[] ends = Shrinkage.ends(drawn, policy.confidence().value());
        return Optional.of(new Proposal(
                scope,
                formula,
                aim,
                errors.eyes(),
                constant.alone(),
                constant.moved(position),
                constant.moved(ends[0]),
                constant.moved(ends[1]),
                policy.confidence().value(),
                constant.moved(weight * position),
                Probability.of(weight),
                Dioptres.of(errors.mean(0)),
                Dioptres.of(errors.deviation(0)),
                Dioptres.of(errors.deviation(position)),
                errors.eyes() >= policy.fewestForOne().value().value()));
    }

    private static boolean tooFew(int fitted, int samples) {
        return fitted < (1 - MOST_FAILED) * samples;
    }

    private Optional<Proposal> three(PositionErrors before, List<RealVector> samples) {
        HaigisSums sums = new HaigisSums(total, ScopeTally.HAIGIS);
        List<Three> drawn = samples.stream()
                .flatMap(sample -> new HaigisSums(sample, ScopeTally.HAIGIS).fit().stream())
                .toList();
        if (tooFew(drawn.size(), samples.size())) {
            return Optional.empty();
        }
        return sums.fit().map(fit -> proposal(sums, fit, drawn, before));
    }

    private Proposal proposal(HaigisSums sums, Three fit, List<Three> drawn, PositionErrors before) {
        OneConstant inUse = new OneConstant(FormulaName.HAIGIS, tally.inUse());
        double[] positions = drawn.stream().mapToDouble(sums::position).toArray();
        double weight = Shrinkage.weight(positions, policy.betweenSurgeons().value());
        double[] a0 = ends(drawn.stream().mapToDouble(Three::a0).toArray());
        double[] a1 = ends(drawn.stream().mapToDouble(Three::a1).toArray());
        double[] a2 = ends(drawn.stream().mapToDouble(Three::a2).toArray());
        Three shrunk = Three.of(inUse.alone()).towards(fit, weight);
        return new Proposal(
                scope,
                FormulaName.HAIGIS,
                Aim.POSITION_REGRESSION,
                sums.eyes(),
                inUse.alone(),
                fit.constants(),
                OneConstant.three(a0[0], a1[0], a2[0]),
                OneConstant.three(a0[1], a1[1], a2[1]),
                policy.confidence().value(),
                shrunk.constants(),
                Probability.of(weight),
                Dioptres.of(before.mean(0)),
                Dioptres.of(before.deviation(0)),
                Dioptres.of(sums.deviation(fit)),
                sums.eyes() >= policy.fewestForThree().value().value());
    }

    private double[] ends(double[] drawn) {
        return Shrinkage.ends(drawn, policy.confidence().value());
    }
}
