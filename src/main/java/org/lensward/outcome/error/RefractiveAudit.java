package org.lensward.outcome.error;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.lensward.optics.FormulaName;
import org.lensward.optics.Formulas;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.Exclusion;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.OutcomePolicy.GroupPolicy;

/** The refractive audit as eyes pass: prediction errors by formula, in all and by group, and the eyes left out by reason. */
public final class RefractiveAudit implements EyeTally<RefractiveAudit> {

    private static final List<FormulaName> FORMULAS =
            Formulas.all().stream().map(formula -> formula.name()).toList();

    private final GroupPolicy policy;
    private final double[] limits;
    private final LengthBands bands;
    private final Map<Exclusion, Long> excluded = new EnumMap<>(Exclusion.class);
    private final Map<Group, Tallies> groups = new HashMap<>();

    /** Of no eye yet. */
    public RefractiveAudit(GroupPolicy policy) {
        this.policy = policy;
        this.limits = policy.within().stream()
                .mapToDouble(limit -> limit.value().value())
                .toArray();
        this.bands = LengthBands.of(policy.lengths());
    }

    @Override
    public void add(Admitted admitted) {
        if (admitted instanceof Admitted.Excluded out) {
            excluded.merge(out.reason(), 1L, Long::sum);
            return;
        }
        Admitted.Counted counted = (Admitted.Counted) admitted;
        double[] errors = errors(counted);
        groupsOf(counted).forEach(group -> groups.computeIfAbsent(group, any -> new Tallies(limits))
                .add(errors));
    }

    /** By formula, not a number where it has no prediction. */
    private static double[] errors(Admitted.Counted counted) {
        double[] errors = new double[FORMULAS.size()];
        for (int each = 0; each < errors.length; each++) {
            FormulaName formula = FORMULAS.get(each);
            errors[each] =
                    counted.seen().containsKey(formula) ? counted.error(formula).value() : Double.NaN;
        }
        return errors;
    }

    private Stream<Group> groupsOf(Admitted.Counted counted) {
        return Stream.of(
                Group.EVERYONE,
                bands.band(counted.biometry().axialLength().value()),
                new Group(Group.By.LENS_MODEL, counted.eye().lens().model()),
                new Group(Group.By.BIOMETRY_METHOD, counted.biometry().method().toString()),
                new Group(Group.By.SURGEON, counted.eye().surgeon()));
    }

    @Override
    public void merge(RefractiveAudit other) {
        other.excluded.forEach((reason, eyes) -> excluded.merge(reason, eyes, Long::sum));
        other.groups.forEach((group, tallies) ->
                groups.computeIfAbsent(group, any -> new Tallies(limits)).merge(tallies));
    }

    /** What the eyes so far say. */
    public AuditReport report() {
        SortedMap<Group, List<ErrorSummary>> summaries = new TreeMap<>();
        SortedMap<Group, Long> eyes = new TreeMap<>();
        groups.forEach((group, tallies) -> {
            eyes.put(group, tallies.eyes);
            summaries.put(
                    group, tallies.summaries((long) policy.fewest().value().value()));
        });
        long counted = Optional.ofNullable(groups.get(Group.EVERYONE))
                .map(all -> all.eyes)
                .orElse(0L);
        long left = excluded.values().stream().mapToLong(Long::longValue).sum();
        return new AuditReport(counted + left, counted, excluded, summaries, eyes);
    }

    /** One tally for each formula. */
    private static final class Tallies {

        private final double[] limits;
        private final @Nullable ErrorTally[] byFormula = new ErrorTally[FORMULAS.size()];
        private long eyes;

        Tallies(double[] limits) {
            this.limits = limits;
        }

        void add(double[] errors) {
            eyes++;
            for (int each = 0; each < errors.length; each++) {
                if (!Double.isNaN(errors[each])) {
                    tally(each).add(errors[each]);
                }
            }
        }

        private ErrorTally tally(int formula) {
            ErrorTally tally = byFormula[formula];
            if (tally == null) {
                tally = new ErrorTally(limits);
                byFormula[formula] = tally;
            }
            return tally;
        }

        void merge(Tallies other) {
            eyes += other.eyes;
            for (int each = 0; each < byFormula.length; each++) {
                ErrorTally theirs = other.byFormula[each];
                if (theirs != null) {
                    tally(each).merge(theirs);
                }
            }
        }

        List<ErrorSummary> summaries(long fewest) {
            return FORMULAS.stream()
                    .flatMap(formula -> Optional.ofNullable(byFormula[FORMULAS.indexOf(formula)])
                            .filter(tally -> tally.count() >= fewest)
                            .map(tally -> tally.summary(formula))
                            .stream())
                    .sorted(Comparator.comparing(ErrorSummary::deviation))
                    .toList();
        }
    }
}
