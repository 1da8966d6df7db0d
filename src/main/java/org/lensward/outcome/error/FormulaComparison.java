package org.lensward.outcome.error;

import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.lensward.optics.FormulaName;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.OperatedEyes;
import org.lensward.outcome.OutcomePolicy;
import org.lensward.outcome.error.ComparedPair.Chance;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * Compares the scatter of formulas on the same eyes, as Holladay et al., J Cataract Refract Surg 2021;47:65 ask: two dependent
 * standard deviations are equal where the difference of both errors does not correlate with their sum (Pitman 1939, Morgan 1939), and
 * the slope is tested with a standard error that allows for unequal scatter (HC4; Wilcox, J Stat Distrib Appl 2015;2:7; values from
 * memory); beside it a bootstrap-t of the logarithm of their ratio. Two passes over the eyes; what is kept does not grow with them.
 *
 * <p>The regression takes eyes as independent: it holds for one eye per patient. The bootstrap draws patients.
 */
public final class FormulaComparison {

    private final PairedErrors first;
    private final SlopeErrors second;
    private final BootstrapT bootstrap;

    private FormulaComparison(PairedErrors first, SlopeErrors second, BootstrapT bootstrap) {
        this.first = first;
        this.second = second;
        this.bootstrap = bootstrap;
    }

    private record Place(int one, int two) {}

    /**
     * Every pair of formulas.
     *
     * @param formulas at least two
     * @param random for the bootstrap; the same state gives the same answer
     * @return nothing where fewer eyes than the policy's least number have predictions of all
     */
    public static List<ComparedPair> compare(
            OperatedEyes eyes, OutcomePolicy policy, List<FormulaName> formulas, RandomGenerator random) {
        PairedErrors first = EyeTally.over(eyes, policy, () -> new PairedErrors(formulas));
        double fewest = Math.max(3, policy.groups().fewest().value().value());
        if (first.eyes() < fewest || first.blocks().filled().size() < 2) {
            return List.of();
        }
        SlopeErrors second = EyeTally.over(eyes, policy, () -> new SlopeErrors(first));
        BootstrapT bootstrap = new BootstrapT(first.blocks(), policy.learning(), random);
        return new FormulaComparison(first, second, bootstrap).pairs();
    }

    private List<ComparedPair> pairs() {
        int formulas = first.formulas().size();
        List<Place> places = IntStream.range(0, formulas)
                .boxed()
                .flatMap(one -> IntStream.range(one + 1, formulas).mapToObj(two -> new Place(one, two)))
                .toList();
        double[] regression = places.stream().mapToDouble(this::chance).toArray();
        List<BootstrapT.Said> said =
                places.stream().map(place -> bootstrap.of(place.one, place.two)).toList();
        double[] drawn = said.stream().mapToDouble(BootstrapT.Said::chance).toArray();
        double[] regressionAdjusted = Holm.adjusted(regression);
        double[] drawnAdjusted = Holm.adjusted(drawn);
        return IntStream.range(0, places.size())
                .mapToObj(each -> pair(
                        places.get(each),
                        chance(regression[each], regressionAdjusted[each]),
                        chance(drawn[each], drawnAdjusted[each]),
                        said.get(each)))
                .toList();
    }

    /** Two-sided, Student's t with eyes - 2 degrees of freedom; errors that never differ tell nothing apart. */
    private double chance(Place place) {
        double statistic = second.statistic(place.one, place.two);
        if (Double.isNaN(statistic)) {
            return 1;
        }
        return 2 * new TDistribution(null, first.eyes() - 2.0).cumulativeProbability(-Math.abs(statistic));
    }

    private ComparedPair pair(Place place, Chance heteroscedastic, Chance drawn, BootstrapT.Said said) {
        double statistic = second.statistic(place.one, place.two);
        return new ComparedPair(
                first.formulas().get(place.one),
                first.formulas().get(place.two),
                first.eyes(),
                Dioptres.of(first.deviation(place.one)),
                Dioptres.of(first.deviation(place.two)),
                PureNumber.of(finite(statistic)),
                heteroscedastic,
                drawn,
                said.ratio());
    }

    /** Errors that follow each other exactly have no scatter to test against. */
    private static double finite(double statistic) {
        return Double.isNaN(statistic) ? 0 : Math.max(-Double.MAX_VALUE, Math.min(Double.MAX_VALUE, statistic));
    }

    private static Chance chance(double alone, double adjusted) {
        return new Chance(Probability.of(Math.min(1, alone)), Probability.of(adjusted));
    }
}
