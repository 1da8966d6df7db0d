package org.lensward.outcome.constant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.outcome.Operated.POLICY;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;
import org.lensward.eye.BiometryMethod;
import org.lensward.eye.Limit;
import org.lensward.optics.FormulaName;
import org.lensward.optics.HaigisConstants;
import org.lensward.optics.LensConstants;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.OutcomePolicy.LearningPolicy;
import org.lensward.outcome.SimulatedEyes;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** Constants that generated the eyes are found again: exactly without noise, inside their interval with it. */
class ConstantStudyTest {

    private static final double EXACT = 1e-6;
    private static final LensConstants USED = constants(118.7, 1.62, 5.37, 0.95, 0.4, 0.1);
    private static final LensConstants TRUTH = constants(119.1, 1.80, 5.60, 1.25, 0.4, 0.1);

    private static LensConstants constants(double a, double sf, double acd, double a0, double a1, double a2) {
        return LensConstants.published(
                Optional.of(PureNumber.of(a)),
                Optional.of(Millimetres.of(sf)),
                Optional.of(Millimetres.of(acd)),
                Optional.of(new HaigisConstants(Millimetres.of(a0), PureNumber.of(a1), PureNumber.of(a2))));
    }

    private static SimulatedEyes eyes(FormulaName formula, LensConstants truth, double noise, int many) {
        return new SimulatedEyes(new SimulatedEyes.Law(formula, truth), USED, noise, many, 3, 17);
    }

    private static List<Proposal> learn(SimulatedEyes eyes) {
        return learn(eyes, 60, USED);
    }

    private static List<Proposal> learn(SimulatedEyes eyes, int replicates, LensConstants inUse) {
        LearningPolicy shipped = POLICY.learning();
        LearningPolicy policy = new LearningPolicy(
                shipped.fewestForOne(),
                shipped.fewestForThree(),
                shipped.betweenSurgeons(),
                new Limit<>(PureNumber.of(replicates), "test"),
                shipped.confidence());
        return EyeTally.over(eyes, POLICY, () -> new ConstantStudy(policy, (model, method) -> Optional.of(inUse)))
                .proposals(new Well19937c(23));
    }

    private static Optional<Proposal> find(List<Proposal> proposals, FormulaName formula, Aim aim, String model) {
        return proposals.stream()
                .filter(each -> each.formula() == formula && each.aim() == aim)
                .filter(each -> each.scope().equals(new Scope(Optional.empty(), model, BiometryMethod.OPTICAL)))
                .findFirst();
    }

    private static double value(FormulaName formula, LensConstants constants) {
        return switch (formula) {
            case SRK_T, T2 -> constants.aConstant().orElseThrow().value().value();
            case HOLLADAY_1 -> constants.surgeonFactor().orElseThrow().value().value();
            case HOFFER_Q -> constants.personalisedAcd().orElseThrow().value().value();
            default -> constants.haigis().orElseThrow().value().a0().value();
        };
    }

    @ParameterizedTest
    @EnumSource(
            mode = Mode.INCLUDE,
            names = {"SRK_T", "T2", "HOLLADAY_1", "HOFFER_Q", "HAIGIS"})
    void without_noise_every_aim_finds_the_constant_that_generated_the_eyes(FormulaName formula) {
        List<Proposal> proposals = learn(eyes(formula, TRUTH, 0, 1200));
        for (Aim aim : List.of(Aim.ZERO_MEAN, Aim.LEAST_DEVIATION, Aim.LEAST_SQUARES)) {
            Proposal found = find(proposals, formula, aim, "model-a").orElseThrow();
            assertThat(value(formula, found.fitted()))
                    .as(formula + " " + aim)
                    .isCloseTo(value(formula, TRUTH), within(EXACT));
            // What rounding leaves of a variance of nought.
            assertThat(found.deviationAfter().value()).isLessThan(1e-5);
            assertThat(found.published()).isEqualTo(new OneConstant(formula, USED).alone());
        }
    }

    @Test
    void without_noise_regression_finds_haigis_three() {
        LensConstants truth = constants(119, 1.8, 5.6, -0.35, 0.27, 0.19);
        Proposal found = find(
                        learn(eyes(FormulaName.HAIGIS, truth, 0, 1200)),
                        FormulaName.HAIGIS,
                        Aim.POSITION_REGRESSION,
                        "model-b")
                .orElseThrow();
        HaigisConstants three = found.fitted().haigis().orElseThrow().value();
        assertThat(three.a0().value()).isCloseTo(-0.35, within(EXACT));
        assertThat(three.a1().value()).isCloseTo(0.27, within(EXACT));
        assertThat(three.a2().value()).isCloseTo(0.19, within(EXACT));
        assertThat(found.deviationAfter().value()).isLessThan(EXACT);
    }

    /** The interval is one of 95 %: of the six that are asked here one may fail once in four seeds; this seed was not chosen. */
    @ParameterizedTest
    @EnumSource(
            mode = Mode.INCLUDE,
            names = {"SRK_T", "T2", "HOLLADAY_1", "HOFFER_Q", "HAIGIS"})
    void with_noise_the_interval_holds_the_truth(FormulaName formula) {
        List<Proposal> proposals = learn(eyes(formula, TRUTH, 0.4, 3000), 400, USED);
        Proposal found = find(proposals, formula, Aim.ZERO_MEAN, "model-a").orElseThrow();
        double truth = value(formula, TRUTH);
        assertThat(value(formula, found.low())).isLessThan(truth);
        assertThat(value(formula, found.high())).isGreaterThan(truth);
        // 0.4 D among about 980 eyes, 1.3 D for a millimetre, four times over.
        double unit = formula == FormulaName.SRK_T || formula == FormulaName.T2 ? 0.62467 : 1;
        double width = (value(formula, found.high()) - value(formula, found.low())) * unit;
        assertThat(width).isCloseTo(4 * 0.4 / 1.3 / Math.sqrt(980), within(0.015));
        assertThat(found.deviationAfter().value()).isCloseTo(0.4, within(0.04));
        assertThat(found.meanBefore().value()).isPositive();
    }

    /** Twelve samples of eyes: of twelve intervals of 95 %, fewer than nine hold the truth once in ten thousand. */
    @Test
    void with_noise_the_intervals_of_the_three_mostly_hold_them() {
        LensConstants truth = constants(119, 1.8, 5.6, -0.35, 0.27, 0.19);
        int[] held = new int[3];
        for (int seed = 1; seed <= 4; seed++) {
            SimulatedEyes eyes =
                    new SimulatedEyes(new SimulatedEyes.Law(FormulaName.HAIGIS, truth), USED, 0.3, 4000, 3, seed);
            List<Proposal> proposals = learn(eyes, 200, USED);
            for (String model : List.of("model-a", "model-b", "model-c")) {
                Proposal found = find(proposals, FormulaName.HAIGIS, Aim.POSITION_REGRESSION, model)
                        .orElseThrow();
                HaigisConstants low = found.low().haigis().orElseThrow().value();
                HaigisConstants high = found.high().haigis().orElseThrow().value();
                held[0] += low.a0().value() <= -0.35 && high.a0().value() >= -0.35 ? 1 : 0;
                held[1] += low.a1().value() <= 0.27 && high.a1().value() >= 0.27 ? 1 : 0;
                held[2] += low.a2().value() <= 0.19 && high.a2().value() >= 0.19 ? 1 : 0;
                assertThat(found.deviationAfter().value()).isCloseTo(0.3, within(0.03));
            }
        }
        assertThat(held[0]).isGreaterThanOrEqualTo(9);
        assertThat(held[1]).isGreaterThanOrEqualTo(9);
        assertThat(held[2]).isGreaterThanOrEqualTo(9);
    }

    @Nested
    class from_few_eyes {

        private final List<Proposal> proposals = learn(eyes(FormulaName.HOLLADAY_1, TRUTH, 0.4, 400));

        @Test
        void a_proposal_leans_on_the_constant_in_use() {
            Proposal few = own("Practitioner/s3");
            Proposal all = find(proposals, FormulaName.HOLLADAY_1, Aim.ZERO_MEAN, "model-a")
                    .orElseThrow();
            assertThat(few.eyes()).isLessThan(15);
            assertThat(few.weight()).isLessThan(all.weight());
            double weight = few.weight().value();
            double used = value(FormulaName.HOLLADAY_1, few.published());
            double fitted = value(FormulaName.HOLLADAY_1, few.fitted());
            assertThat(value(FormulaName.HOLLADAY_1, few.proposed()))
                    .isCloseTo(used + weight * (fitted - used), within(1e-12));
        }

        @Test
        void it_is_not_for_adoption() {
            assertThatThrownBy(() -> own("Practitioner/s3").adopt("Practitioner/lead", LocalDate.EPOCH, "2"))
                    .isInstanceOf(IllegalStateException.class);
        }

        private Proposal own(String surgeon) {
            return proposals.stream()
                    .filter(each -> each.scope().surgeon().equals(Optional.of(surgeon)))
                    .filter(each -> each.scope().model().equals("model-a"))
                    .filter(each -> each.formula() == FormulaName.HOLLADAY_1 && each.aim() == Aim.ZERO_MEAN)
                    .findFirst()
                    .orElseThrow();
        }
    }

    @Test
    void a_named_clinician_adopts_a_version() {
        Proposal found = find(
                        learn(eyes(FormulaName.SRK_T, TRUTH, 0.4, 400)), FormulaName.SRK_T, Aim.ZERO_MEAN, "model-a")
                .orElseThrow();
        Adoption adopted = found.adopt("Practitioner/lead", LocalDate.of(2026, 11, 25), "2");
        assertThat(adopted.proposal()).isEqualTo(found);
        assertThatThrownBy(() -> found.adopt(" ", LocalDate.EPOCH, "2")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> found.adopt("Practitioner/lead", LocalDate.EPOCH, ""))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void constants_out_of_reach_are_not_proposed() {
        LensConstants far = constants(121.5, 3.5, 7.3, 3, 0.4, 0.1);
        List<Proposal> proposals = learn(eyes(FormulaName.HOLLADAY_1, far, 0.1, 400));
        assertThat(find(proposals, FormulaName.HOLLADAY_1, Aim.ZERO_MEAN, "model-a"))
                .isEmpty();
        assertThat(find(proposals, FormulaName.HOLLADAY_1, Aim.LEAST_SQUARES, "model-a"))
                .isEmpty();
    }

    @Test
    void what_is_not_in_use_teaches_nothing() {
        assertThat(EyeTally.over(
                                eyes(FormulaName.SRK_T, TRUTH, 0.4, 100),
                                POLICY,
                                () -> new ConstantStudy(POLICY.learning(), (model, method) -> Optional.empty()))
                        .proposals(new Well19937c(1)))
                .isEmpty();
        assertThat(learn(eyes(FormulaName.SRK_T, TRUTH, 0.4, 20)).stream()
                        .filter(each -> each.scope().model().equals("model-c")))
                .isEmpty();
    }

    /** The eyes' plans used other constants than those in use today: what is learnt does not change. */
    @Test
    void what_was_used_then_does_not_matter() {
        SimulatedEyes eyes = eyes(FormulaName.T2, TRUTH, 0, 600);
        LensConstants today = constants(118.9, 1.7, 5.5, 1.1, 0.4, 0.1);
        List<Proposal> proposals = learn(eyes, 60, today);
        Proposal found =
                find(proposals, FormulaName.T2, Aim.ZERO_MEAN, "model-a").orElseThrow();
        assertThat(value(FormulaName.T2, found.fitted())).isCloseTo(119.1, within(EXACT));
        assertThat(value(FormulaName.T2, found.published())).isEqualTo(118.9);
    }

    @Test
    void parts_and_seed_decide_nothing_but_rounding() {
        List<Proposal> one = learn(eyes(FormulaName.T2, TRUTH, 0.4, 600));
        List<Proposal> two =
                learn(new SimulatedEyes(new SimulatedEyes.Law(FormulaName.T2, TRUTH), USED, 0.4, 600, 1, 17));
        assertThat(two).hasSameSizeAs(one);
        for (int each = 0; each < one.size(); each++) {
            assertThat(two.get(each).scope()).isEqualTo(one.get(each).scope());
            if (two.get(each).aim() == Aim.ZERO_MEAN) {
                assertThat(value(two.get(each).formula(), two.get(each).high()))
                        .isCloseTo(value(one.get(each).formula(), one.get(each).high()), within(1e-6));
            }
        }
    }
}
