package org.lensward.lens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.ANTERIOR_CHAMBER_DEPTH_MISSING;
import static org.lensward.finding.FindingCode.CONSTANT_CONVERTED;
import static org.lensward.finding.FindingCode.CONSTANT_MISSING;
import static org.lensward.optics.FormulaName.HAIGIS;
import static org.lensward.optics.FormulaName.HOFFER_Q;
import static org.lensward.optics.FormulaName.HOLLADAY_1;
import static org.lensward.optics.FormulaName.SRK_T;
import static org.lensward.optics.FormulaName.T2;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.BiometryMethod;
import org.lensward.eye.Laterality;
import org.lensward.eye.Specimen;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.optics.FormulaName;
import org.lensward.optics.HaigisConstants;
import org.lensward.optics.LensConstants;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/** Which formulas see an eye with a lens, and which of them is trusted. */
class FormulaViewsTest {

    private static final Specimen EYE =
            Specimen.ordinary(Laterality.RIGHT, LocalDate.of(2026, 2, 16)).depth(3.1);

    private static final LensModel ONLY_A = Lenses.model("bag", LensSite.CAPSULAR_BAG, Lenses.aConstant(118.4));

    private static Outcome<FormulaViews> see(LensModel model, Specimen eye) {
        return Lenses.views(model, eye.biometry());
    }

    private static List<FormulaName> formulas(Outcome<FormulaViews> views) {
        return views.value().orElseThrow().all().stream()
                .map(FormulaView::formula)
                .toList();
    }

    private static List<FindingCode> codes(Outcome<FormulaViews> views) {
        return views.findings().stream().map(Finding::code).toList();
    }

    @Test
    void every_constant_published_every_formula_sees_and_nothing_is_said() {
        Outcome<FormulaViews> views = see(Lenses.bag(), EYE);
        assertThat(formulas(views)).containsExactly(SRK_T, T2, HOLLADAY_1, HOFFER_Q, HAIGIS);
        assertThat(views.findings()).isEmpty();
        assertThat(views.value().orElseThrow().all()).noneMatch(FormulaView::constantConverted);
    }

    @Nested
    class Given_no_constant_for_the_method {

        @Test
        void the_lens_is_withheld_naming_model_and_method() {
            Outcome<FormulaViews> views = see(Lenses.bag(), EYE.by(BiometryMethod.IMMERSION_ULTRASOUND));
            assertThat(views.value()).isEmpty();
            assertThat(codes(views)).containsExactly(CONSTANT_MISSING);
            assertThat(views.findings().get(0).message())
                    .isEqualTo(
                            "The lens model the bag lens has no constant for eyes measured by immersion ultrasound.");
            assertThat(views.findings().get(0).evidence())
                    .containsExactly(Lenses.bag().evidence().at("property"));
        }
    }

    @Nested
    class Given_an_A_constant_alone {

        private final Outcome<FormulaViews> views = see(ONLY_A, EYE);

        @Test
        void every_formula_sees() {
            assertThat(formulas(views)).containsExactly(SRK_T, T2, HOLLADAY_1, HOFFER_Q, HAIGIS);
        }

        @Test
        void each_converted_constant_is_reported_by_its_formula() {
            assertThat(views.findings())
                    .extracting(Finding::message)
                    .containsExactly(converted("Holladay 1"), converted("Hoffer Q"), converted("Haigis"));
            assertThat(codes(views)).containsOnly(CONSTANT_CONVERTED);
        }

        private static String converted(String formula) {
            return "The " + formula
                    + " constant of the bag lens was converted from its A-constant, not derived from outcomes.";
        }
    }

    @Nested
    class Given_no_anterior_chamber_depth {

        private final Specimen shallow = Specimen.ordinary(Laterality.RIGHT, LocalDate.of(2026, 2, 16));

        @Test
        void haigis_is_left_out_with_a_note() {
            Outcome<FormulaViews> views = see(Lenses.bag(), shallow);
            assertThat(formulas(views)).containsExactly(SRK_T, T2, HOLLADAY_1, HOFFER_Q);
            assertThat(codes(views)).containsExactly(ANTERIOR_CHAMBER_DEPTH_MISSING);
        }

        @Test
        void a_model_with_haigis_constants_alone_is_withheld_for_want_of_another() {
            LensConstants haigisAlone = LensConstants.published(
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(new HaigisConstants(Millimetres.of(1.3), PureNumber.of(0.4), PureNumber.of(0.1))));
            Outcome<FormulaViews> views = see(Lenses.model("bag", LensSite.CAPSULAR_BAG, haigisAlone), shallow);
            assertThat(views.value()).isEmpty();
            assertThat(codes(views)).containsExactly(ANTERIOR_CHAMBER_DEPTH_MISSING, CONSTANT_MISSING);
        }
    }

    /** Bands of NICE guideline NG77 (values from memory): below 22.00 mm, to 26.00 mm, above. */
    @Nested
    class Given_the_policys_bands {

        private final LensPolicy policy = Lenses.policy(TargetSide.NEAREST);

        private FormulaName trusted(LensModel model, Specimen eye) {
            return see(model, eye).value().orElseThrow().trusted(policy).formula();
        }

        @ParameterizedTest
        @CsvSource({"21.99, HAIGIS", "22.00, SRK_T", "26.00, SRK_T", "26.01, HAIGIS"})
        void the_length_decides(double length, FormulaName formula) {
            assertThat(trusted(Lenses.bag(), EYE.length(length))).isEqualTo(formula);
        }

        @ParameterizedTest
        @CsvSource({"21.99, HOFFER_Q", "22.00, SRK_T", "26.00, SRK_T", "26.01, SRK_T"})
        void without_a_chamber_depth_the_next_preferred_is_trusted(double length, FormulaName formula) {
            Specimen eye = Specimen.ordinary(Laterality.RIGHT, LocalDate.of(2026, 2, 16));
            assertThat(trusted(Lenses.bag(), eye.length(length))).isEqualTo(formula);
        }

        @Test
        void a_constant_of_its_own_comes_before_preference() {
            assertThat(trusted(ONLY_A, EYE.length(27))).isEqualTo(SRK_T);
        }

        @Test
        void all_preferred_converted_the_first_preferred_is_trusted() {
            assertThat(trusted(ONLY_A, EYE.length(21))).isEqualTo(HAIGIS);
        }

        @Test
        void none_of_the_preferred_sees_the_first_that_does_is_trusted() {
            LensConstants hofferAlone = LensConstants.published(
                    Optional.empty(), Optional.empty(), Optional.of(Millimetres.of(5.2)), Optional.empty());
            assertThat(trusted(Lenses.model("bag", LensSite.CAPSULAR_BAG, hofferAlone), EYE))
                    .isEqualTo(HOFFER_Q);
        }
    }
}
