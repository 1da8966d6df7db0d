package org.lensward.outcome.complication;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.outcome.Operated.POLICY;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.util.CombinatoricsUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.lensward.lens.LensSite;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.outcome.Admission;
import org.lensward.outcome.AfterSurgery;
import org.lensward.outcome.Complication;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.Operated;
import org.lensward.outcome.OperatedEye;
import org.lensward.outcome.OperatedEyes;
import org.lensward.outcome.SimulatedEyes;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/** Complications counted, charted and judged. */
class ComplicationTest {

    private static final LocalDate DAY = LocalDate.of(2026, 1, 5);
    private static final Probability STANDARD = Probability.of(0.0101);
    private static final PureNumber DOUBLED = PureNumber.of(2);
    private static final CusumLimits LIMITS = new CusumLimits(PureNumber.of(2.5), PureNumber.of(-2.5));

    @ParameterizedTest
    @CsvFileSource(resources = "/published/binomial-funnel.csv", useHeadersInDisplayName = true)
    void funnel_limits_are_exact(int operations, long warning, long alarm) {
        FunnelLimits limits = FunnelLimits.at(operations, STANDARD);
        assertThat(limits.upperWarning()).isEqualTo(warning).isEqualTo(smallest(operations, 0.975));
        assertThat(limits.upperAlarm()).isEqualTo(alarm).isEqualTo(smallest(operations, 0.9995));
        assertThat(sum(operations, limits.lowerWarning())).isLessThanOrEqualTo(0.025);
        assertThat(sum(operations, limits.lowerWarning() + 1)).isGreaterThan(0.025);
        assertThat(sum(operations, limits.lowerAlarm())).isLessThanOrEqualTo(0.0005);
        assertThat(sum(operations, limits.lowerAlarm() + 1)).isGreaterThan(0.0005);
        assertThat(limits.position(alarm + 1)).isEqualTo(FunnelLimits.Position.MORE_ALARM);
        assertThat(limits.position(alarm)).isEqualTo(FunnelLimits.Position.MORE_WARNING);
        assertThat(limits.position(warning)).isEqualTo(FunnelLimits.Position.COMMON);
        assertThat(limits.position(limits.lowerWarning() + 1)).isEqualTo(FunnelLimits.Position.COMMON);
    }

    @Test
    void too_few_is_a_finding_too() {
        FunnelLimits limits = FunnelLimits.at(2000, STANDARD);
        assertThat(limits.position(limits.lowerWarning())).isEqualTo(FunnelLimits.Position.FEWER_WARNING);
        assertThat(limits.position(limits.lowerAlarm())).isEqualTo(FunnelLimits.Position.FEWER_ALARM);
    }

    /** The binomial terms, one by one. */
    private static double sum(int n, long most) {
        double sum = 0;
        for (int k = 0; k <= most; k++) {
            sum += Math.exp(CombinatoricsUtils.factorialLog(n)
                    - CombinatoricsUtils.factorialLog(k)
                    - CombinatoricsUtils.factorialLog(n - k)
                    + k * Math.log(0.0101)
                    + (n - k) * Math.log1p(-0.0101));
        }
        return sum;
    }

    private static long smallest(int n, double share) {
        long k = 0;
        while (sum(n, k) < share) {
            k++;
        }
        return k;
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/steiner-2000.csv", useHeadersInDisplayName = true)
    void weights_of_the_cumulative_sum(double risk, String event, String none) {
        assertPrinted(CusumArms.weight(2, risk, true), event);
        assertPrinted(CusumArms.weight(2, risk, false), none);
    }

    private static void assertPrinted(double computed, String printed) {
        BigDecimal number = new BigDecimal(printed);
        assertThat(computed).isCloseTo(number.doubleValue(), within(number.ulp().doubleValue() / 2 + 1e-9));
    }

    private static Operation operation(double risk, boolean rupture) {
        return new Operation(DAY, "s", Probability.of(risk), Optional.empty(), rupture);
    }

    @Test
    void a_run_of_ruptures_signals_and_the_arm_starts_again() {
        RuptureSeries series = new RuptureSeries(DOUBLED, LIMITS);
        List<SeriesPoint> points = new ArrayList<>();
        for (int each = 0; each < 5; each++) {
            points.add(series.next(operation(0.01, true)));
        }
        // 0.6832 each: the fourth passes 2.5.
        assertThat(points)
                .extracting(SeriesPoint::signal)
                .containsExactly(
                        SeriesPoint.Signal.NONE,
                        SeriesPoint.Signal.NONE,
                        SeriesPoint.Signal.NONE,
                        SeriesPoint.Signal.WORSE,
                        SeriesPoint.Signal.NONE);
        assertThat(points.get(3).worse().value()).isCloseTo(4 * 0.6832, within(0.001));
        assertThat(points.get(4).worse().value()).isCloseTo(0.6832, within(0.0001));
        assertThat(points.get(4).saved().value()).isCloseTo(5 * 0.01 - 5, within(1e-12));
        assertThat(points.get(4).number()).isEqualTo(5);
    }

    @Test
    void a_long_run_without_ruptures_is_better_than_foretold() {
        RuptureSeries series = new RuptureSeries(DOUBLED, LIMITS);
        SeriesPoint.Signal signal = SeriesPoint.Signal.NONE;
        int operations = 0;
        while (signal == SeriesPoint.Signal.NONE && operations < 1000) {
            signal = series.next(operation(0.05, false)).signal();
            operations++;
        }
        assertThat(signal).isEqualTo(SeriesPoint.Signal.BETTER);
        // ln(1 / (1 - 0.05 + 0.025)) = 0.0253 for each operation.
        assertThat(operations).isEqualTo((int) Math.ceil(2.5 / -Math.log(0.975)));
        assertThat(series.next(operation(0.05, false)).better().value()).isCloseTo(Math.log(0.975), within(1e-12));
    }

    /** After a signal, an arm goes on as one that begins. */
    @Property(tries = 200)
    void a_series_that_signalled_goes_on_as_a_new_one(@ForAll @Size(max = 40) List<Boolean> ruptures) {
        RuptureSeries old = new RuptureSeries(DOUBLED, LIMITS);
        // ln(2 / 1.02) = 0.673 each: the fourth passes 2.5.
        for (int each = 0; each < 3; each++) {
            old.next(operation(0.02, true));
        }
        assertThat(old.next(operation(0.02, true)).signal()).isEqualTo(SeriesPoint.Signal.WORSE);
        RuptureSeries fresh = new RuptureSeries(DOUBLED, LIMITS);
        for (boolean rupture : ruptures) {
            SeriesPoint one = old.next(operation(0.02, rupture));
            SeriesPoint two = fresh.next(operation(0.02, rupture));
            assertThat(one.worse()).isEqualTo(two.worse());
        }
    }

    @Test
    void series_and_operations_that_cannot_be_are_refused() {
        RuptureSeries series = new RuptureSeries(DOUBLED, LIMITS);
        series.next(operation(0.01, false));
        Operation earlier = new Operation(DAY.minusDays(1), "s", STANDARD, Optional.empty(), false);
        assertThatThrownBy(() -> series.next(earlier)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new RuptureSeries(PureNumber.of(1), LIMITS))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new CusumLimits(PureNumber.of(0), PureNumber.of(-1)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new CusumLimits(PureNumber.of(1), PureNumber.of(0)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> operation(0, false)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> operation(1, false)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CusumLimits.simulated(List.of(), POLICY.complications(), new Well19937c(1)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Fresh series, drawn with another seed, pass the limit about as often as asked: 5 % of 1,000, give or take four standard errors. */
    @Test
    void simulated_limits_hold_the_false_alarms() {
        List<Probability> mix = List.of(Probability.of(0.005), Probability.of(0.01), Probability.of(0.03));
        CusumLimits limits = CusumLimits.simulated(mix, POLICY.complications(), new Well19937c(31));
        assertThat(limits).isEqualTo(CusumLimits.simulated(mix, POLICY.complications(), new Well19937c(31)));
        Well19937c random = new Well19937c(32);
        int alarms = 0;
        for (int each = 0; each < 1000; each++) {
            RuptureSeries series = new RuptureSeries(DOUBLED, limits);
            boolean alarm = false;
            for (int operation = 0; operation < 1000; operation++) {
                double risk = mix.get(random.nextInt(3)).value();
                alarm |=
                        series.next(operation(risk, random.nextDouble() < risk)).signal() == SeriesPoint.Signal.WORSE;
            }
            alarms += alarm ? 1 : 0;
        }
        assertThat(alarms).isBetween(15, 90);
    }

    private static ComplicationAudit audit(OperatedEyes eyes) {
        return EyeTally.over(eyes, POLICY, () -> new ComplicationAudit(POLICY.complications()));
    }

    private static Operated ruptured() {
        return Operated.ordinary()
                .after(new AfterSurgery(
                        true, Set.of(Complication.VITREOUS_LOSS), Optional.empty(), List.of(), Optional.empty()));
    }

    /** Ten operations at 10 % with three ruptures: E = 1, V = 0.9; the interval solves the two Poisson tails. */
    @Test
    void ruptures_against_what_was_expected() {
        List<OperatedEye> eyes = new ArrayList<>();
        for (int each = 0; each < 10; each++) {
            eyes.add((each < 3 ? ruptured() : Operated.ordinary())
                    .keys("p" + each, "o" + each)
                    .eye(0.1));
        }
        ObservedExpected all = audit(OperatedEyes.of(eyes)).everyone().orElseThrow();
        assertThat(all.observed()).isEqualTo(3);
        assertThat(all.expected().value()).isCloseTo(1, within(1e-12));
        assertThat(all.variance().value()).isCloseTo(0.9, within(1e-12));
        assertThat(all.ratio().value()).isCloseTo(3, within(1e-12));
        assertThat(all.adjusted().value()).isCloseTo(3 * 0.0101, within(1e-12));
        assertThat(1 - new PoissonDistribution(all.interval().low().value()).cumulativeProbability(2))
                .isCloseTo(0.025, within(1e-6));
        assertThat(new PoissonDistribution(all.interval().high().value()).cumulativeProbability(3))
                .isCloseTo(0.025, within(1e-6));
    }

    @Test
    void a_rupture_counts_though_the_eye_does_not_and_once_only() {
        Operated sulcus = ruptured().site(Optional.of(LensSite.SULCUS));
        ComplicationAudit audit = audit(OperatedEyes.of(List.of(sulcus.eye(), sulcus.eye())));
        assertThat(audit.everyone().orElseThrow().operations()).isEqualTo(1);
        assertThat(audit.surgeons()).containsOnlyKeys("Practitioner/s1");
        assertThat(audit.refittedBaseline()).isEmpty();
    }

    @Test
    void what_nobody_foretold_or_told_is_left_out_by_number() {
        Operated silent = Operated.ordinary()
                .after(new AfterSurgery(false, Set.of(), Optional.empty(), List.of(), Optional.empty()));
        ComplicationAudit audit = audit(OperatedEyes.of(
                List.of(silent.eye(), Operated.ordinary().keys("q", "2").eye(0))));
        assertThat(audit.leftOut()).isEqualTo(2);
        assertThat(audit.everyone()).isEmpty();
        assertThat(audit.refittedBaseline()).isEmpty();
    }

    /** Simulated eyes rupture as foretold: the ratio's interval holds 1 in all and for at least eight of ten surgeons. */
    @Test
    void eyes_that_fare_as_foretold_have_a_ratio_of_one() {
        LensConstants used = LensConstants.ofAConstant(PureNumber.of(118.7));
        ComplicationAudit audit =
                audit(new SimulatedEyes(new SimulatedEyes.Law(FormulaName.T2, used), used, 0.4, 20_000, 4, 41));
        assertThat(audit.everyone().orElseThrow().operations()).isEqualTo(20_000);
        assertThat(audit.everyone().orElseThrow().interval().holds(PureNumber.of(1)))
                .isTrue();
        assertThat(audit.surgeons().values().stream()
                        .filter(each -> each.interval().holds(PureNumber.of(1)))
                        .count())
                .isGreaterThanOrEqualTo(8);
    }

    /** The baseline solves sum of p = ruptures: with one odds ratio for all, odds = ruptures / others / ratio. */
    @Property(tries = 30)
    void the_baseline_is_refitted_to_the_ruptures(@ForAll @IntRange(min = 1, max = 19) int ruptures) {
        ComplicationAudit audit = new ComplicationAudit(POLICY.complications());
        Admission admission = new Admission(POLICY);
        for (int each = 0; each < 20; each++) {
            Operated eye = each < ruptures ? ruptured() : Operated.ordinary();
            audit.add(
                    admission.admit(eye.keys(String.format("p%02d", each), "o").eye()));
        }
        double odds = ruptures / (20.0 - ruptures) / 1.5;
        assertThat(audit.refittedBaseline().orElseThrow().value()).isCloseTo(odds / (1 + odds), within(1e-9));
    }
}
