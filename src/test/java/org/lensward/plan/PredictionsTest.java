package org.lensward.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.eye.Sign;
import org.lensward.lens.LensModel;
import org.lensward.lens.Lenses;
import org.lensward.quantity.Dioptres;

/** What each method says of the chosen lens and its neighbours, and how sure it is. */
class PredictionsTest {

    private static List<Prediction> predictions(Cases given) {
        return Cases.plan(given).lens().orElseThrow().predictions();
    }

    private static Uncertainty chosen(Cases given) {
        return Cases.plan(given).lens().orElseThrow().chosen().uncertainty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {22.5, 23.5, 25.5, 27})
    void to_land_within_one_dioptre_is_no_less_likely_than_within_half(double length) {
        assertThat(predictions(Cases.ordinary().measured(eye -> eye.length(length))))
                .extracting(Prediction::uncertainty)
                .allSatisfy(sure -> {
                    assertThat(sure.deviation().value()).isPositive();
                    assertThat(sure.withinHalf().value()).isBetween(0.0, 1.0);
                    assertThat(sure.withinOne()).isGreaterThanOrEqualTo(sure.withinHalf());
                    assertThat(sure.largest()).isNotBlank();
                });
    }

    @Test
    void the_less_the_readings_agree_the_less_sure_is_the_prediction() {
        List<Double> deviations = IntStream.rangeClosed(1, 4)
                .mapToObj(step -> Cases.ordinary().measured(eye -> eye.scatter(0.05 * step)))
                .map(given -> chosen(given).deviation().value())
                .toList();
        assertThat(deviations).isSorted().doesNotHaveDuplicates();
        assertThat(deviations.get(0))
                .isGreaterThan(chosen(Cases.ordinary()).deviation().value());
    }

    /** Optical repeatability is 0.0006 of the length (secondary source, see SpreadPolicy): 0.014 mm here. */
    @Test
    void readings_that_agree_better_than_usual_promise_nothing_more() {
        assertThat(chosen(Cases.ordinary().measured(eye -> eye.scatter(0.005)))).isEqualTo(chosen(Cases.ordinary()));
    }

    @Test
    void badly_scattered_readings_are_what_to_improve_first() {
        assertThat(chosen(Cases.ordinary().measured(eye -> eye.scatter(0.3))).largest())
                .isEqualTo("axial length");
    }

    @Nested
    class Given_the_table_of_powers {

        private final LensPlan lens = Cases.plan(Cases.ordinary()).lens().orElseThrow();

        @Test
        void it_holds_the_choice_and_two_made_powers_on_either_side() {
            double choice = lens.kit().primary().power().value();
            assertThat(lens.predictions()).allSatisfy(each -> assertThat(each.table())
                    .extracting(row -> row.power().value())
                    .containsExactly(choice - 1, choice - 0.5, choice, choice + 0.5, choice + 1));
        }

        @Test
        void each_row_is_what_its_method_predicts_and_more_power_is_more_myopia() {
            assertThat(lens.predictions()).allSatisfy(each -> {
                assertThat(each.table()).allSatisfy(row -> assertThat(row.predicted())
                        .isEqualTo(each.view().refraction(row.power())));
                assertThat(each.table())
                        .extracting(row -> -row.predicted().value())
                        .isSorted();
                assertThat(each.table())
                        .filteredOn(
                                row -> row.power().equals(lens.kit().primary().power()))
                        .singleElement()
                        .extracting(PowerRow::predicted)
                        .isEqualTo(each.predicted());
            });
        }

        @Test
        void it_ends_where_the_powers_made_end() {
            double choice = lens.kit().primary().power().value();
            LensModel few = Lenses.madeIn(Lenses.bag(), Lenses.range(choice - 0.5, choice + 3, 0.5));
            Cases given = Cases.ordinary().catalogue(few, Lenses.sulcus(), Lenses.anteriorChamber());
            assertThat(predictions(given)).allSatisfy(each -> assertThat(each.table())
                    .extracting(row -> row.power().value())
                    .containsExactly(choice - 0.5, choice, choice + 0.5, choice + 1));
        }
    }

    /** The thick eye explains the thin: with the same lens position it ends near it, how near is our own experience, no source. */
    @Nested
    class Given_rays_through_a_thick_eye {

        @Test
        void an_ordinary_eye_has_them_for_every_method_near_the_thin_prediction() {
            assertThat(predictions(Cases.ordinary()))
                    .allSatisfy(each -> assertThat(each.thickEye().orElseThrow().value())
                            .isCloseTo(each.predicted().value(), within(1.5)));
        }

        @Test
        void a_lens_without_power_is_traced_like_any_other() {
            LensModel weak = Lenses.madeIn(Lenses.bag(), Lenses.range(-10, 10, 0.5));
            Cases given = Cases.ordinary()
                    .measured(eye -> eye.length(30.5).powers(43, 43.25))
                    .catalogue(weak, Lenses.sulcus(), Lenses.anteriorChamber());
            List<Prediction> all = predictions(given.aimingAt(aimOfAPlateau(given)));
            assertThat(all.get(0).table())
                    .extracting(row -> row.power().value())
                    .contains(0.0);
            assertThat(all).allSatisfy(each -> assertThat(each.thickEye()).isPresent());
        }

        /** The refraction that a lens of nought leaves. */
        private double aimOfAPlateau(Cases given) {
            return Cases.plan(given)
                    .lens()
                    .orElseThrow()
                    .chosen()
                    .view()
                    .refraction(Dioptres.of(0))
                    .value();
        }

        @Test
        void a_reshaped_cornea_has_none() {
            Cases lasered = Cases.ordinary()
                    .measured(eye -> eye.powers(38, 38.5).length(26))
                    .signs(Sign.CORNEA_FLATTENED_BY_LASER);
            assertThat(predictions(lasered)).isNotEmpty().allMatch(each -> each.thickEye()
                    .isEmpty());
        }

        @Test
        void an_eye_whose_oil_stays_has_none() {
            Cases oiled = Cases.ordinary().signs(Sign.SILICONE_OIL, Sign.SILICONE_OIL_STAYS);
            assertThat(predictions(oiled)).isNotEmpty().allMatch(each -> each.thickEye()
                    .isEmpty());
        }
    }

    /** Scatter after laser: Haigis-L 0.721 D, Shammas-PL 0.698 D (Wu et al., BMC Ophthalmol 2017;17:44, abstract). */
    @Nested
    class Given_a_laser_for_myopia {

        private final Cases lasered = Cases.ordinary()
                .measured(eye -> eye.powers(38, 38.5).length(26))
                .signs(Sign.CORNEA_FLATTENED_BY_LASER);

        @ParameterizedTest
        @CsvSource({"haigis-l, 0.721", "shammas-myopic, 0.698"})
        void the_scatter_is_the_papers(String method, double deviation) {
            assertThat(predictions(lasered))
                    .filteredOn(each -> each.view().method().code().equals(method))
                    .singleElement()
                    .satisfies(each -> {
                        assertThat(each.uncertainty().deviation().value()).isEqualTo(deviation);
                        assertThat(each.uncertainty().largest()).isEqualTo("the reshaped cornea");
                    });
        }

        @Test
        void steadier_readings_do_not_make_it_surer() {
            assertThat(chosen(lasered.measured(eye -> eye.scatter(0.001)))
                            .deviation()
                            .value())
                    .isEqualTo(0.721);
        }
    }

    @Test
    void exactly_one_prediction_chose_the_lens_after_laser_too() {
        Cases lasered = Cases.ordinary()
                .measured(eye -> eye.powers(38, 38.5).length(26))
                .signs(Sign.CORNEA_FLATTENED_BY_LASER);
        assertThat(predictions(lasered)).filteredOn(Prediction::chosen).hasSize(1);
    }
}
