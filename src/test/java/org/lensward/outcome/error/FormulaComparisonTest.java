package org.lensward.outcome.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.outcome.Operated.POLICY;

import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.outcome.Admission;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.OperatedEyes;
import org.lensward.outcome.SimulatedEyes;
import org.lensward.quantity.PureNumber;

/** The streaming test against the textbook's matrices, and its answers on eyes whose truth is known. */
class FormulaComparisonTest {

    private static final LensConstants USED = LensConstants.ofAConstant(PureNumber.of(118.7));
    private static final List<FormulaName> THREE =
            List.of(FormulaName.HOLLADAY_1, FormulaName.SRK_T, FormulaName.HOFFER_Q);

    private static SimulatedEyes eyes(int many, double noise, long seed) {
        return new SimulatedEyes(new SimulatedEyes.Law(FormulaName.HOLLADAY_1, USED), USED, noise, many, 3, seed);
    }

    private static List<ComparedPair> compare(OperatedEyes eyes, List<FormulaName> formulas) {
        return FormulaComparison.compare(eyes, POLICY, formulas, new Well19937c(5));
    }

    /** (X'X)^-1 X' diag(e^2 / (1-h)^d) X (X'X)^-1 with h the diagonal of X (X'X)^-1 X' (Cribari-Neto 2004), by Commons Math. */
    @Test
    void the_statistic_is_that_of_the_matrices() {
        SimulatedEyes eyes = eyes(60, 0.4, 9);
        List<double[]> errors = eyes.part(0)
                .map(eye -> new Admission(POLICY).admit(eye))
                .filter(Admitted.Counted.class::isInstance)
                .map(eye -> PairedErrors.errors(THREE, eye))
                .toList();
        ComparedPair pair =
                compare(OperatedEyes.of(eyes.part(0).toList()), THREE).get(0);
        assertThat(pair.eyes()).isEqualTo(errors.size());
        double expected = statistic(errors);
        assertThat(pair.statistic().value()).isCloseTo(expected, within(1e-9));
        double chance = 2 * new TDistribution(errors.size() - 2).cumulativeProbability(-Math.abs(expected));
        assertThat(pair.heteroscedastic().alone().value()).isCloseTo(chance, within(1e-9));
    }

    private static double statistic(List<double[]> errors) {
        int n = errors.size();
        RealMatrix x = new Array2DRowRealMatrix(n, 2);
        RealMatrix y = new Array2DRowRealMatrix(n, 1);
        for (int eye = 0; eye < n; eye++) {
            x.setRow(eye, new double[] {1, errors.get(eye)[0] + errors.get(eye)[1]});
            y.setEntry(eye, 0, errors.get(eye)[0] - errors.get(eye)[1]);
        }
        RealMatrix inverse =
                new LUDecomposition(x.transpose().multiply(x)).getSolver().getInverse();
        RealMatrix slope = inverse.multiply(x.transpose()).multiply(y);
        RealMatrix hat = x.multiply(inverse).multiply(x.transpose());
        RealMatrix residual = y.subtract(x.multiply(slope));
        RealMatrix meat = new Array2DRowRealMatrix(n, n);
        for (int eye = 0; eye < n; eye++) {
            double h = hat.getEntry(eye, eye);
            double e = residual.getEntry(eye, 0);
            meat.setEntry(eye, eye, e * e / Math.pow(1 - h, Math.min(4, n * h / 2)));
        }
        RealMatrix covariance =
                inverse.multiply(x.transpose()).multiply(meat).multiply(x).multiply(inverse);
        return slope.getEntry(1, 0) / Math.sqrt(covariance.getEntry(1, 1));
    }

    @Test
    void the_formula_that_holds_scatters_less_than_one_that_does_not() {
        ComparedPair pair = compare(eyes(3000, 0.15, 2), List.of(FormulaName.HOLLADAY_1, FormulaName.HOFFER_Q))
                .get(0);
        assertThat(pair.deviationOfFirst()).isLessThan(pair.deviationOfSecond());
        assertThat(pair.statistic().value()).isNegative();
        assertThat(pair.heteroscedastic().alone().value()).isLessThan(0.001);
        assertThat(pair.bootstrap().alone().value()).isLessThan(0.01);
        assertThat(pair.ratio().high().value()).isLessThan(1);
    }

    /** With noise far above what the formulas differ by, differences are found about as often as chance has it. */
    @Test
    void formulas_that_scatter_alike_are_seldom_told_apart() {
        int told = 0;
        int drawn = 0;
        for (int seed = 0; seed < 60; seed++) {
            ComparedPair pair = compare(eyes(150, 8, seed), List.of(FormulaName.HOLLADAY_1, FormulaName.SRK_T))
                    .get(0);
            told += pair.heteroscedastic().alone().value() < 0.05 ? 1 : 0;
            drawn += pair.bootstrap().alone().value() < 0.05 ? 1 : 0;
        }
        // 60 times 5 % is 3; ten or more would come once in a thousand.
        assertThat(told).isLessThan(10);
        assertThat(drawn).isLessThan(10);
    }

    @Test
    void every_pair_is_compared_and_the_same_seed_says_the_same() {
        List<ComparedPair> pairs = compare(eyes(400, 0.3, 4), THREE);
        assertThat(pairs).hasSize(3);
        assertThat(pairs).isEqualTo(compare(eyes(400, 0.3, 4), THREE));
        assertThat(pairs)
                .allSatisfy(pair -> assertThat(pair.heteroscedastic().adjusted().value())
                        .isGreaterThanOrEqualTo(pair.heteroscedastic().alone().value()));
    }

    @Test
    void a_few_eyes_or_a_formula_that_sees_none_say_nothing() {
        assertThat(compare(eyes(5, 0.3, 4), THREE)).isEmpty();
        assertThat(compare(eyes(50, 0.3, 4), List.of(FormulaName.HAIGIS, FormulaName.SHAMMAS_MYOPIC)))
                .isEmpty();
    }

    @Test
    void a_formula_is_not_told_from_itself() {
        ComparedPair pair = compare(eyes(50, 0.3, 4), List.of(FormulaName.T2, FormulaName.T2))
                .get(0);
        assertThat(pair.heteroscedastic().alone().value()).isEqualTo(1);
        assertThat(pair.bootstrap().alone().value()).isEqualTo(1);
        assertThat(pair.ratio().low().value()).isEqualTo(1);
    }

    /** Holm 1979: 0.01, 0.04, 0.03, 0.005 become 0.03, 0.06, 0.06, 0.02 (R's p.adjust gives the same, value from memory). */
    @Test
    void many_comparisons_are_paid_for() {
        assertThat(Holm.adjusted(0.01, 0.04, 0.03, 0.005))
                .containsExactly(new double[] {0.03, 0.06, 0.06, 0.02}, within(1e-12));
        assertThat(Holm.adjusted(0.9, 0.8)).containsExactly(new double[] {1, 1}, within(1e-12));
    }
}
