package org.lensward.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.eye.BiometryMethod.IMMERSION_ULTRASOUND;
import static org.lensward.finding.FindingCode.AXIAL_LENGTH_UNUSUAL;
import static org.lensward.finding.FindingCode.LENGTH_CORRECTED_FOR_SOUND;
import static org.lensward.finding.FindingCode.OIL_POWER_ADDED;
import static org.lensward.finding.FindingCode.SILICONE_OIL_IN_EYE;

import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.eye.Sign;
import org.lensward.eye.Specimen;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.lens.Lenses;
import org.lensward.lens.PlanningMethod;

/** A length is mended where the sound passed through something the device did not assume. Hoffer, J Cataract Refract Surg 1994;20:554. */
class SoundCorrectionTest {

    private static Cases byUltrasound(Function<Specimen, Specimen> change) {
        return Cases.ordinary()
                .measured(change)
                .catalogue(
                        Lenses.measuredBy(Lenses.bag(), IMMERSION_ULTRASOUND),
                        Lenses.measuredBy(Lenses.sulcus(), IMMERSION_ULTRASOUND),
                        Lenses.measuredBy(Lenses.anteriorChamber(), IMMERSION_ULTRASOUND));
    }

    private static double lengthUsed(Cases given) {
        return Cases.plan(given)
                .lens()
                .orElseThrow()
                .biometry()
                .axialLength()
                .value()
                .value();
    }

    private static List<FindingCode> codes(Cases given) {
        return Cases.plan(given).findings().stream().map(Finding::code).toList();
    }

    @Nested
    class Given_a_natural_lens {

        @Test
        void light_is_left_alone() {
            assertThat(lengthUsed(Cases.ordinary())).isEqualTo(23.5);
            assertThat(codes(Cases.ordinary())).doesNotContain(LENGTH_CORRECTED_FOR_SOUND);
        }

        /** A reading at 1532 m/s lacks 0.35 mm of an eye with its lens (Hoffer 1994, see SoundPath). */
        @Test
        void at_the_velocity_of_aqueous_the_lens_is_added() {
            Cases given = byUltrasound(eye -> eye.length(23).sound(1532));
            assertThat(lengthUsed(given)).isCloseTo(23.35, within(1e-9));
            assertThat(Cases.plan(given).findings())
                    .filteredOn(finding -> finding.code() == LENGTH_CORRECTED_FOR_SOUND)
                    .singleElement()
                    .satisfies(finding -> {
                        assertThat(finding.message()).contains("23.00 mm", "1532 m/s", "23.35 mm", "natural lens");
                        assertThat(finding.evidence()).containsExactly(Specimen.LENGTH);
                    });
        }

        /** Hoffer's own mean for an average eye with its lens. */
        @ParameterizedTest
        @ValueSource(doubles = {1550, 1555})
        void at_an_eyes_usual_velocity_nothing_is_gained(double velocity) {
            Cases given = byUltrasound(eye -> eye.length(23).sound(velocity));
            assertThat(lengthUsed(given)).isEqualTo(23);
            assertThat(codes(given)).doesNotContain(LENGTH_CORRECTED_FOR_SOUND);
        }

        @Test
        void a_velocity_nobody_recorded_is_taken_as_the_usual_one() {
            assertThat(lengthUsed(byUltrasound(eye -> eye.length(23).by(IMMERSION_ULTRASOUND))))
                    .isEqualTo(23);
        }
    }

    /** Oil behind the natural lens: mean velocity 1139 m/s (Hoffer 1994, see SoundPath). */
    @Nested
    class Given_silicone_oil {

        private Cases oil(Function<Specimen, Specimen> change, Sign... fate) {
            return byUltrasound(change).signs(fate);
        }

        @ParameterizedTest
        @CsvSource({"1532, 31.6", "1550, 32"})
        void the_length_is_brought_to_the_velocity_of_oil(double velocity, double reading) {
            Cases given = oil(eye -> eye.length(reading).sound(velocity), Sign.SILICONE_OIL, Sign.SILICONE_OIL_LEAVES);
            assertThat(lengthUsed(given)).isCloseTo(reading * 1139 / velocity, within(1e-9));
            assertThat(codes(given)).contains(LENGTH_CORRECTED_FOR_SOUND);
        }

        @Test
        void the_judged_length_is_the_eyes_and_not_the_devices() {
            Cases hidden = oil(eye -> eye.length(23.5).sound(1550), Sign.SILICONE_OIL, Sign.SILICONE_OIL_LEAVES);
            Cases invented = oil(eye -> eye.length(32).sound(1550), Sign.SILICONE_OIL, Sign.SILICONE_OIL_LEAVES);
            assertThat(codes(hidden)).contains(AXIAL_LENGTH_UNUSUAL);
            assertThat(codes(invented)).doesNotContain(AXIAL_LENGTH_UNUSUAL);
        }

        @ParameterizedTest
        @EnumSource(
                value = Sign.class,
                names = {"SILICONE_OIL_STAYS", "SILICONE_OIL_LEAVES"})
        void what_becomes_of_it_says_that_it_is_there(Sign fate) {
            assertThat(codes(oil(eye -> eye.length(32).sound(1550), fate))).contains(LENGTH_CORRECTED_FOR_SOUND);
        }

        @ParameterizedTest
        @EnumSource(
                value = Sign.class,
                names = {"SILICONE_OIL_STAYS", "SILICONE_OIL_LEAVES"})
        void without_the_velocity_there_is_no_length_and_no_lens(Sign fate) {
            EyePlan plan = Cases.plan(oil(eye -> eye.length(32).by(IMMERSION_ULTRASOUND), Sign.SILICONE_OIL, fate));
            assertThat(plan.lens()).isEmpty();
            assertThat(plan.findings())
                    .filteredOn(finding -> finding.code() == SILICONE_OIL_IN_EYE)
                    .singleElement()
                    .satisfies(finding -> assertThat(finding.evidence()).containsExactly(Specimen.LENGTH));
        }
    }

    /** Common practice: 1000 (1.4034 - 1.336) / (L - d), some 3.5 D in an average eye. */
    @Nested
    class Given_oil_that_stays_behind_a_lens_measured_by_light {

        private final Cases oiled = Cases.ordinary().signs(Sign.SILICONE_OIL, Sign.SILICONE_OIL_STAYS);
        private final EyePlan plan = Cases.plan(oiled);

        @Test
        void the_lens_is_stronger_and_the_plan_says_so_once() {
            LensPlan dry = Cases.plan(Cases.ordinary()).lens().orElseThrow();
            LensPlan oil = plan.lens().orElseThrow();
            double added = oil.chosen()
                    .powerForTarget()
                    .minus(dry.chosen().powerForTarget())
                    .value();
            assertThat(added).isBetween(3.0, 4.2);
            assertThat(oil.chosen().view().oil().value()).isCloseTo(added, within(1e-9));
            assertThat(plan.findings())
                    .filteredOn(finding -> finding.code() == OIL_POWER_ADDED)
                    .singleElement()
                    .satisfies(finding -> {
                        assertThat(finding.message()).contains(String.format("%.2f D", added));
                        assertThat(finding.evidence().get(0).resource()).startsWith("Condition/");
                    });
            assertThat(plan.state()).isEqualTo(PlanState.PROVISIONAL);
        }

        @Test
        void the_labelled_power_still_leaves_the_target() {
            LensPlan oil = plan.lens().orElseThrow();
            assertThat(oil.chosen().predicted().value()).isCloseTo(oil.target().value(), within(0.5));
        }

        @Test
        void every_lens_of_the_kit_is_stronger() {
            assertThat(plan.lens().orElseThrow().kit().all())
                    .hasSize(4)
                    .allSatisfy(lens -> assertThat(lens.predicted().value()).isBetween(-0.75, -0.2499));
        }
    }

    @Test
    void oil_that_leaves_asks_for_no_more_power() {
        Cases leaving = Cases.ordinary().signs(Sign.SILICONE_OIL, Sign.SILICONE_OIL_LEAVES);
        assertThat(codes(leaving)).doesNotContain(OIL_POWER_ADDED, SILICONE_OIL_IN_EYE);
        assertThat(Cases.plan(leaving).lens().orElseThrow().kit().primary().power())
                .isEqualTo(Cases.plan(Cases.ordinary())
                        .lens()
                        .orElseThrow()
                        .kit()
                        .primary()
                        .power());
    }

    @Test
    void oil_that_both_stays_and_leaves_withholds() {
        Cases both = Cases.ordinary().signs(Sign.SILICONE_OIL, Sign.SILICONE_OIL_STAYS, Sign.SILICONE_OIL_LEAVES);
        assertThat(Cases.plan(both).lens()).isEmpty();
        assertThat(codes(both)).contains(SILICONE_OIL_IN_EYE);
    }

    @Test
    void oil_of_which_nobody_says_what_becomes_withholds() {
        assertThat(Cases.plan(Cases.ordinary().signs(Sign.SILICONE_OIL)).lens()).isEmpty();
    }

    @Test
    void the_methods_are_those_of_any_eye() {
        assertThat(Cases.plan(Cases.ordinary().signs(Sign.SILICONE_OIL, Sign.SILICONE_OIL_LEAVES))
                        .lens()
                        .orElseThrow()
                        .predictions())
                .extracting(each -> each.view().method())
                .extracting(PlanningMethod::code)
                .contains("srk-t", "haigis");
    }
}
