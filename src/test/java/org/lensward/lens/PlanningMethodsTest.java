package org.lensward.lens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.AXIAL_LENGTH_ADJUSTED;
import static org.lensward.finding.FindingCode.CORNEA_AFTER_LASER;
import static org.lensward.optics.LongEyeAdjustment.NONE;
import static org.lensward.optics.LongEyeAdjustment.WANG_KOCH_2018;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lensward.eye.BeforeLaser;
import org.lensward.eye.Eye;
import org.lensward.eye.Histories;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.eye.OtherReadings;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/** Which methods may compute an eye's lens. */
class PlanningMethodsTest {

    private static final Specimen ORDINARY =
            Specimen.ordinary(Laterality.RIGHT, LocalDate.of(2026, 2, 16)).depth(3.1);

    /** Flattened by about six dioptres. */
    static final BeforeLaser BEFORE_LASER =
            new BeforeLaser(recorded("power", 44), recorded("before", -6.5), recorded("after", -0.25));

    private static Measured<Dioptres> recorded(String what, double value) {
        return new Measured<>(Dioptres.of(value), new Evidence("Observation/" + what, "1", "value"));
    }

    static Eye eye(Optional<BeforeLaser> before, Sign... signs) {
        return new Eye(
                Laterality.RIGHT,
                Optional.of(ORDINARY.biometry()),
                Histories.of(signs),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                new OtherReadings(Optional.empty(), before, List.of()));
    }

    private static List<String> words(Outcome<List<PlanningMethod>> methods) {
        return methods.value().orElseThrow().stream().map(PlanningMethod::words).toList();
    }

    private static List<String> codes(Outcome<List<PlanningMethod>> methods) {
        return methods.value().orElseThrow().stream().map(PlanningMethod::code).toList();
    }

    @Test
    void an_ordinary_eye_has_the_five_published_formulas() {
        Outcome<List<PlanningMethod>> methods =
                PlanningMethods.of(eye(Optional.empty()), Millimetres.of(23.5), WANG_KOCH_2018);
        assertThat(words(methods)).containsExactly("SRK/T", "T2", "Holladay 1", "Hoffer Q", "Haigis");
        assertThat(methods.findings()).isEmpty();
        assertThat(PlanningMethods.refused(eye(Optional.empty()))).isEmpty();
        assertThat(PlanningMethods.reshaping(eye(Optional.empty()))).isEmpty();
    }

    /** Thresholds of Wang and Koch 2018 (values from memory): SRK/T from 27.0 mm, Holladay 1 from 26.5 mm; our fade starts 1 mm below. */
    @Nested
    class Given_a_long_eye {

        @Test
        void the_adjusted_ones_stand_beside_the_published() {
            var methods = PlanningMethods.of(eye(Optional.empty()), Millimetres.of(28), WANG_KOCH_2018);
            assertThat(codes(methods))
                    .containsExactly(
                            "srk-t", "t2", "holladay-1", "hoffer-q", "haigis", "srk-t-long-eye", "holladay-1-long-eye");
            assertThat(words(methods)).contains("SRK/T, length adjusted (Wang and Koch 2018)");
        }

        @ParameterizedTest
        @CsvSource({"25.4, 5", "26.6, 7", "28, 7"})
        void each_formula_has_its_own_threshold(double length, int methods) {
            assertThat(codes(PlanningMethods.of(eye(Optional.empty()), Millimetres.of(length), WANG_KOCH_2018)))
                    .hasSize(methods);
        }

        @Test
        void without_an_adjustment_in_the_policy_nothing_is_adjusted() {
            assertThat(codes(PlanningMethods.of(eye(Optional.empty()), Millimetres.of(28), NONE)))
                    .hasSize(5);
        }

        @Test
        void the_adjusted_one_is_trusted_and_asks_for_more_power() {
            LensPolicy policy = Lenses.policy(TargetSide.NEAREST);
            LensModel onlyA = Lenses.model("bag", LensSite.CAPSULAR_BAG, Lenses.aConstant(118.4));
            MeasuredEye measured = new MeasuredEye(ORDINARY.length(28).biometry(), Optional.empty());
            var seen = PlanningMethods.of(eye(Optional.empty()), Millimetres.of(28), WANG_KOCH_2018)
                    .then(methods -> FormulaViews.of(onlyA, measured, methods));
            FormulaView trusted = seen.value().orElseThrow().trusted(policy);
            assertThat(trusted.method().code()).isEqualTo("srk-t-long-eye");
            double published = seen.value()
                    .orElseThrow()
                    .all()
                    .get(0)
                    .power(Dioptres.of(0))
                    .value();
            assertThat(trusted.power(Dioptres.of(0)).value()).isGreaterThan(published);
            assertThat(seen.findings())
                    .extracting(Finding::code)
                    .filteredOn(AXIAL_LENGTH_ADJUSTED::equals)
                    .hasSize(2);
        }
    }

    @Nested
    class Given_a_laser {

        @Test
        void for_myopia_the_methods_without_history_are_used() {
            var methods = PlanningMethods.of(
                    eye(Optional.empty(), Sign.CORNEA_FLATTENED_BY_LASER), Millimetres.of(26), WANG_KOCH_2018);
            assertThat(words(methods)).containsExactly("Haigis-L", "Shammas-PL");
            assertThat(codes(methods)).containsExactly("haigis-l", "shammas-myopic");
        }

        @Test
        void figures_from_before_it_put_double_k_first() {
            var methods = PlanningMethods.of(
                    eye(Optional.of(BEFORE_LASER), Sign.CORNEA_FLATTENED_BY_LASER), Millimetres.of(26), WANG_KOCH_2018);
            assertThat(codes(methods))
                    .containsExactly(
                            "srk-t-double-k",
                            "t2-double-k",
                            "holladay-1-double-k",
                            "hoffer-q-double-k",
                            "haigis-l",
                            "shammas-myopic");
        }

        @Test
        void for_hyperopia_there_is_its_own_regression() {
            var methods = PlanningMethods.of(
                    eye(Optional.empty(), Sign.CORNEA_STEEPENED_BY_LASER), Millimetres.of(22), WANG_KOCH_2018);
            assertThat(codes(methods)).containsExactly("shammas-hyperopic");
        }

        @Test
        void a_general_word_does_not_contradict_the_particular_one() {
            var methods = PlanningMethods.of(
                    eye(Optional.empty(), Sign.CORNEA_RESHAPED, Sign.CORNEA_FLATTENED_BY_LASER),
                    Millimetres.of(26),
                    WANG_KOCH_2018);
            assertThat(codes(methods)).contains("haigis-l");
        }

        @Test
        void each_reports_the_scatter_of_its_paper() {
            var methods = PlanningMethods.of(
                    eye(Optional.of(BEFORE_LASER), Sign.CORNEA_FLATTENED_BY_LASER), Millimetres.of(26), WANG_KOCH_2018);
            assertThat(methods.value().orElseThrow())
                    .allSatisfy(method -> assertThat(method.reported()).isPresent());
        }
    }

    static List<List<Sign>> unplannable() {
        return List.of(
                List.of(Sign.CORNEA_INCISED),
                List.of(Sign.CORNEA_RESHAPED),
                List.of(Sign.CORNEA_FLATTENED_BY_LASER, Sign.CORNEA_STEEPENED_BY_LASER),
                List.of(Sign.CORNEA_INCISED, Sign.CORNEA_FLATTENED_BY_LASER));
    }

    @ParameterizedTest
    @MethodSource("unplannable")
    void incised_unknown_or_both_ways_is_refused_even_with_figures_from_before(List<Sign> signs) {
        Eye eye = eye(Optional.of(BEFORE_LASER), signs.toArray(Sign[]::new));
        var methods = PlanningMethods.of(eye, Millimetres.of(25), WANG_KOCH_2018);
        assertThat(methods.value()).isEmpty();
        assertThat(methods.findings()).extracting(Finding::code).containsExactly(CORNEA_AFTER_LASER);
        assertThat(PlanningMethods.refused(eye)).isEqualTo(methods.findings());
        assertThat(methods.findings().get(0).evidence())
                .allSatisfy(evidence -> assertThat(evidence.resource()).startsWith("Condition/"));
    }
}
