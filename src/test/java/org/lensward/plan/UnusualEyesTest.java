package org.lensward.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.ANTERIOR_CHAMBER_DEPTH_MISSING;
import static org.lensward.finding.FindingCode.CORNEA_PERHAPS_RESHAPED;
import static org.lensward.finding.FindingCode.POST_LASER_METHOD;
import static org.lensward.plan.Cases.find;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Laterality;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;
import org.lensward.lens.KitRole;
import org.lensward.lens.LensModel;
import org.lensward.lens.LensPolicy;
import org.lensward.lens.LensSite;
import org.lensward.lens.Lenses;
import org.lensward.lens.TargetSide;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LongEyeAdjustment;

/** Eyes that the standard formulas were not made for: a cornea perhaps or surely lasered, a long eye. */
class UnusualEyesTest {

    @Nested
    class Given_a_cornea_as_after_a_laser {

        @ParameterizedTest
        @CsvSource({"39.4, true", "39.6, false", "48.9, false", "49.1, true"})
        void that_the_record_does_not_mention_is_asked_about(double power, boolean said) {
            EyePlan plan = Cases.plan(Cases.ordinary().measured(eye -> eye.powers(power, power)));
            assertThat(find(plan, CORNEA_PERHAPS_RESHAPED).isPresent()).isEqualTo(said);
            if (said) {
                assertThat(plan.state()).isNotEqualTo(PlanState.READY);
            }
        }

        @Test
        void that_the_record_mentions_is_not_asked_about_again() {
            Cases given = Cases.ordinary()
                    .measured(eye -> eye.powers(38, 38.5).length(26))
                    .signs(Sign.CORNEA_FLATTENED_BY_LASER);
            assertThat(find(given, CORNEA_PERHAPS_RESHAPED)).isEmpty();
        }
    }

    @Nested
    class Given_a_laser_for_myopia {

        private final Cases lasered = Cases.ordinary()
                .measured(eye -> eye.powers(38, 38.5).length(26))
                .signs(Sign.CORNEA_FLATTENED_BY_LASER);

        @Test
        void the_method_that_chose_the_lens_is_named_with_its_reason() {
            assertThat(find(lasered, POST_LASER_METHOD).orElseThrow().message())
                    .contains("Haigis-L", "needs no figures from before");
        }

        @Test
        void a_method_that_could_not_see_the_eye_is_not_named() {
            Specimen shallow = Specimen.ordinary(Laterality.RIGHT, Cases.OPERATION.minusMonths(1))
                    .powers(38, 38.5)
                    .length(26);
            EyePlan plan = Cases.plan(lasered.measured(eye -> shallow));
            assertThat(find(plan, ANTERIOR_CHAMBER_DEPTH_MISSING)).isPresent();
            assertThat(plan.lens().orElseThrow().chosen().view().method().words())
                    .isEqualTo("Shammas-PL");
            assertThat(find(plan, POST_LASER_METHOD).orElseThrow().message())
                    .contains("Shammas-PL")
                    .doesNotContain("Haigis-L");
        }

        @Test
        void a_converted_haigis_constant_gives_way_to_the_A_constant_of_shammas() {
            EyePlan plan = Cases.plan(lasered.catalogue(
                    Lenses.model("bag", LensSite.CAPSULAR_BAG, Lenses.aConstant(118.4)),
                    Lenses.sulcus(),
                    Lenses.anteriorChamber()));
            assertThat(plan.lens().orElseThrow().chosen().view().formula()).isEqualTo(FormulaName.SHAMMAS_MYOPIC);
        }

        @Test
        void every_lens_of_the_kit_is_chosen_by_a_method_made_for_it() {
            assertThat(Cases.plan(lasered).lens().orElseThrow().kit().all())
                    .hasSize(4)
                    .allMatch(lens -> lens.method().afterLaser().isPresent());
        }
    }

    /** Unadjusted, SRK/T leaves long eyes hyperopic (Wang et al. 2011); a back-up lens must not. */
    @Test
    void in_a_long_eye_every_back_up_is_chosen_by_the_adjusted_length() {
        LensPolicy policy = Lenses.adjusting(Lenses.policy(TargetSide.MYOPIC), LongEyeAdjustment.WANG_KOCH_2018);
        LensModel bag = Lenses.model("bag", LensSite.CAPSULAR_BAG, Lenses.aConstant(118.4));
        LensModel low = Lenses.madeIn(Lenses.anteriorChamber(), Lenses.range(0, 30, 0.5));
        Cases given = Cases.ordinary().measured(eye -> eye.length(28)).catalogue(bag, Lenses.sulcus(), low);
        LensPlan plan = Cases.plan(given, policy).lens().orElseThrow();
        assertThat(plan.kit().all())
                .filteredOn(lens -> lens.role() == KitRole.PRIMARY || lens.role() == KitRole.ANTERIOR_CHAMBER)
                .hasSize(2)
                .allSatisfy(lens -> assertThat(lens.method().code()).isEqualTo("srk-t-long-eye"));
        assertThat(plan.chosen().predicted().value()).isCloseTo(plan.target().value(), within(0.5));
    }
}
