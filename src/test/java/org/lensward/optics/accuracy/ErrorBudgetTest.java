package org.lensward.optics.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.BiometryMethod;
import org.lensward.optics.EyeShape;
import org.lensward.optics.OpticsSpecimen;
import org.lensward.optics.Spread;
import org.lensward.optics.SrkT;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

class ErrorBudgetTest {

    private static final Dioptres HALF = Dioptres.of(0.5);
    private static final Dioptres PLANO = Dioptres.of(0);

    /**
     * 40,000 eyes drawn with a fixed seed, the label uniform as the budget states. A sampled deviation's own standard error is
     * SD / sqrt(2 n), a sampled chance's sqrt(p q / n); four of them must hold. The chance also bears that the label is uniform and not
     * normal: 0.005.
     */
    @ParameterizedTest
    @CsvSource({"21.5, 45", "23.5, 43.5", "28.5, 42"})
    void sampling_agrees_within_its_own_error(double axialLength, double keratometry) {
        EyeShape shape = OpticsSpecimen.shape(axialLength, keratometry);
        ThinEye eye = OpticsSpecimen.seen(new SrkT(), shape);
        Dioptres label = eye.power(PLANO);
        Spreads spreads = SpreadPolicy.usual().of(BiometryMethod.OPTICAL, shape);
        ErrorBudget budget = ErrorBudget.of(eye, label, spreads);
        double[] sampled = sample(eye, label, spreads, 40_000);

        double expected = budget.deviation().value();
        assertThat(Math.sqrt(StatUtils.variance(sampled)))
                .isCloseTo(expected, within(4 * expected / Math.sqrt(2.0 * sampled.length)));
        double chance = budget.within(HALF, PLANO, PLANO).value();
        double landed = Arrays.stream(sampled).filter(r -> Math.abs(r) <= 0.5).count() / (double) sampled.length;
        assertThat(landed).isCloseTo(chance, within(4 * Math.sqrt(chance * (1 - chance) / sampled.length) + 0.005));
    }

    private static double[] sample(ThinEye eye, Dioptres label, Spreads spreads, int size) {
        Well19937c random = new Well19937c(20260101);
        double limit = LabelTolerance.ofPower(label).value();
        double[] refractions = new double[size];
        for (int i = 0; i < size; i++) {
            ThinEye actual = OpticsSpecimen.thin(
                    eye.lensPosition().value()
                            + spreads.lensPosition().deviation().value() * random.nextGaussian(),
                    eye.opticalLength().value()
                            + spreads.axialLength().deviation().value() * random.nextGaussian(),
                    eye.cornealPower().value()
                            + spreads.cornealPower().deviation().value() * random.nextGaussian());
            double power = label.value() + limit * (2 * random.nextDouble() - 1);
            refractions[i] = actual.refraction(Dioptres.of(power)).value()
                    + spreads.refraction().deviation().value() * random.nextGaussian();
        }
        return refractions;
    }

    /**
     * Shares of Norrby 2008 with spreads read back from its abstract: 0.6 D mean absolute error is 0.752 D, of which 35 % is 0.445 D of
     * lens position, 27 % is 0.391 D of refraction, 17 % is 0.310 D of length. Slopes of the average eye worked by hand: 1.382 D/mm,
     * 2.766 D/mm and 0.693 for the label. What the abstract does not apportion stands on the cornea.
     */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/norrby-2008.csv", useHeadersInDisplayName = true)
    void an_average_eye_has_norrbys_shares(Contributor contributor, double share) {
        ThinEye average = OpticsSpecimen.thin(5.2, 23.5, 43);
        double label = 0.4 / Math.sqrt(3) * 0.6934;
        double remainder = Math.sqrt(0.752 * 0.752 * (1 - 0.35 - 0.27 - 0.17) - label * label);
        Spreads ultrasound = new Spreads(
                new Spread<>(Millimetres.of(0.310 / 2.766), "test"),
                new Spread<>(Dioptres.of(remainder), "test"),
                new Spread<>(Millimetres.of(0.445 / 1.382), "test"),
                new Spread<>(Dioptres.of(0.391), "test"));
        ErrorBudget budget = ErrorBudget.of(average, average.power(PLANO), ultrasound);
        assertThat(budget.share(contributor).value()).isCloseTo(share, within(0.005));
        assertThat(budget.largest().contributor()).isEqualTo(Contributor.LENS_POSITION);
        assertThat(budget.meanAbsoluteError().value()).isCloseTo(0.6, within(0.005));
    }

    @Test
    void the_error_of_an_optical_length_grows_with_the_eye() {
        SpreadPolicy policy = SpreadPolicy.usual();
        Spreads shorter = policy.of(BiometryMethod.OPTICAL, OpticsSpecimen.shape(22, 43));
        Spreads longer = policy.of(BiometryMethod.OPTICAL, OpticsSpecimen.shape(30, 43));
        assertThat(longer.axialLength().deviation())
                .isGreaterThan(shorter.axialLength().deviation());
    }

    @ParameterizedTest
    @CsvSource({"OPTICAL, IMMERSION_ULTRASOUND", "IMMERSION_ULTRASOUND, CONTACT_ULTRASOUND"})
    void a_worse_method_leaves_a_wider_budget(BiometryMethod better, BiometryMethod worse) {
        EyeShape shape = OpticsSpecimen.shape(23.5, 43.5);
        assertThat(budget(shape, better).deviation())
                .isLessThan(budget(shape, worse).deviation());
    }

    @Test
    void scattered_readings_of_this_eye_widen_its_budget() {
        Spreads usual = SpreadPolicy.usual().of(BiometryMethod.OPTICAL, OpticsSpecimen.shape(23.5, 43.5));
        assertThat(usual.withLengthScatter(Millimetres.of(0.001))).isEqualTo(usual);
        assertThat(usual.withLengthScatter(Millimetres.of(0.2)).axialLength().deviation())
                .isEqualTo(Millimetres.of(0.2));
    }

    /** An average eye lands where large series do: 0.39 D (Cooke 2016) to 0.47 D (Melles 2018), both for several formulas. */
    @Test
    void the_defaults_are_in_keeping_with_large_series() {
        ErrorBudget average = budget(OpticsSpecimen.shape(23.5, 43.5), BiometryMethod.OPTICAL);
        assertThat(average.deviation().value()).isBetween(0.39, 0.47);
    }

    @Test
    void shares_add_up_to_one() {
        ErrorBudget budget = budget(OpticsSpecimen.shape(23.5, 43.5), BiometryMethod.OPTICAL);
        double sum = Arrays.stream(Contributor.values())
                .mapToDouble(contributor -> budget.share(contributor).value())
                .sum();
        assertThat(sum).isCloseTo(1, within(1e-12));
    }

    private static ErrorBudget budget(EyeShape shape, BiometryMethod method) {
        ThinEye eye = OpticsSpecimen.seen(new SrkT(), shape);
        return ErrorBudget.of(eye, eye.power(PLANO), SpreadPolicy.usual().of(method, shape));
    }
}
