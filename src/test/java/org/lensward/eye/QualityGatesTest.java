package org.lensward.eye;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.AXIAL_LENGTH_UNUSUAL;
import static org.lensward.finding.FindingCode.CONTACT_ULTRASOUND;
import static org.lensward.finding.FindingCode.CORNEAL_ASTIGMATISM_HIGH;
import static org.lensward.finding.FindingCode.CORNEAL_ASTIGMATISM_TORIC;
import static org.lensward.finding.FindingCode.EYES_DIFFER_IN_CORNEAL_POWER;
import static org.lensward.finding.FindingCode.EYES_DIFFER_IN_LENGTH;
import static org.lensward.finding.FindingCode.FELLOW_EYE_NOT_MEASURED;
import static org.lensward.finding.FindingCode.FELLOW_EYE_SURPRISE;
import static org.lensward.finding.FindingCode.KERATOMETRY_UNUSUAL;
import static org.lensward.finding.FindingCode.LENGTH_READINGS_SCATTERED;
import static org.lensward.finding.FindingCode.LENGTH_SIGNAL_WEAK;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.quantity.Millimetres;

/** Each gate at, just under and just over its limit; the limits and their sources stand in {@link Policies}. */
class QualityGatesTest {

    private static final LocalDate OPERATION = LocalDate.of(2026, 3, 16);
    private static final Specimen RIGHT = Specimen.ordinary(Laterality.RIGHT, OPERATION.minusMonths(1));
    private static final Specimen LEFT = Specimen.ordinary(Laterality.LEFT, OPERATION.minusMonths(1));

    private final QualityGates gates = new QualityGates(Policies.standard());

    private List<Finding> judge(Specimen eye, Eye fellow) {
        return gates.judge(eye.biometry(), eye.eye(), fellow, OPERATION);
    }

    /** The gates' codes for an eye whose fellow has the same measurements, so that no gate between the eyes speaks. */
    private List<FindingCode> codes(Specimen eye) {
        Specimen twin = LEFT.length(eye.biometry().axialLength().value().value())
                .cornea(eye.biometry().keratometry().value());
        return judge(eye, twin.eye()).stream().map(Finding::code).toList();
    }

    @Test
    void an_ordinary_eye_passes() {
        assertThat(judge(RIGHT, LEFT.eye())).isEmpty();
    }

    @Test
    void everything_wrong_is_said_at_once() {
        Specimen eye = RIGHT.length(28)
                .powers(45, 50)
                .by(BiometryMethod.CONTACT_ULTRASOUND)
                .scatter(1)
                .signal(1);
        assertThat(judge(eye, LEFT.surprisedBy(2).eye()))
                .extracting(Finding::code)
                .containsExactlyInAnyOrder(
                        AXIAL_LENGTH_UNUSUAL,
                        LENGTH_READINGS_SCATTERED,
                        LENGTH_SIGNAL_WEAK,
                        CONTACT_ULTRASOUND,
                        KERATOMETRY_UNUSUAL,
                        CORNEAL_ASTIGMATISM_HIGH,
                        CORNEAL_ASTIGMATISM_TORIC,
                        FELLOW_EYE_SURPRISE,
                        EYES_DIFFER_IN_LENGTH,
                        EYES_DIFFER_IN_CORNEAL_POWER);
    }

    @Nested
    class Given_an_axial_length {

        @ParameterizedTest
        @ValueSource(doubles = {21.30, 21.31, 26.59, 26.60})
        void inside_its_limits_it_passes(double length) {
            assertThat(codes(RIGHT.length(length))).isEmpty();
        }

        @ParameterizedTest
        @ValueSource(doubles = {21.29, 26.61})
        void outside_them_it_is_unusual(double length) {
            assertThat(codes(RIGHT.length(length))).containsExactly(AXIAL_LENGTH_UNUSUAL);
        }

        @Test
        void the_finding_quotes_it_with_its_limits_and_shows_where_it_stands() {
            Finding finding =
                    judge(RIGHT.length(26.61), LEFT.length(26.61).eye()).get(0);
            assertThat(finding.message()).isEqualTo("The axial length of 26.61 mm lies outside 21.30 mm to 26.60 mm.");
            assertThat(finding.evidence()).containsExactly(Specimen.LENGTH);
        }

        @ParameterizedTest
        @ValueSource(doubles = {0, 0.04, 0.05})
        void readings_close_together_pass(double scatter) {
            assertThat(codes(RIGHT.scatter(scatter))).isEmpty();
        }

        @Test
        void readings_too_far_apart_are_scattered() {
            assertThat(codes(RIGHT.scatter(0.06))).containsExactly(LENGTH_READINGS_SCATTERED);
        }

        @ParameterizedTest
        @ValueSource(doubles = {2.00, 2.01})
        void a_strong_signal_passes(double signal) {
            assertThat(codes(RIGHT.signal(signal))).isEmpty();
        }

        @Test
        void a_signal_below_the_limit_is_weak() {
            assertThat(codes(RIGHT.signal(1.99))).containsExactly(LENGTH_SIGNAL_WEAK);
        }

        @ParameterizedTest
        @EnumSource
        void only_contact_ultrasound_is_doubted(BiometryMethod method) {
            assertThat(codes(RIGHT.by(method)).contains(CONTACT_ULTRASOUND))
                    .isEqualTo(method == BiometryMethod.CONTACT_ULTRASOUND);
        }
    }

    @Nested
    class Given_a_cornea {

        @ParameterizedTest
        @ValueSource(doubles = {41.00, 41.01, 46.99, 47.00})
        void with_a_mean_power_inside_its_limits_it_passes(double power) {
            assertThat(codes(RIGHT.powers(power, power))).isEmpty();
            assertThat(codes(RIGHT.powers(power - 0.3, power + 0.3))).isEmpty();
        }

        @ParameterizedTest
        @ValueSource(doubles = {40.99, 47.01})
        void with_a_mean_power_outside_them_it_is_unusual(double power) {
            assertThat(codes(RIGHT.powers(power, power))).containsExactly(KERATOMETRY_UNUSUAL);
        }

        @ParameterizedTest
        @ValueSource(doubles = {41.5, 42, 42.3, 43.1, 44.4, 45.6})
        void with_astigmatism_just_under_one_dioptre_nothing_is_said(double flat) {
            assertThat(codes(RIGHT.powers(flat, flat + 0.99))).isEmpty();
        }

        @ParameterizedTest
        @ValueSource(doubles = {41.5, 42, 42.3, 43.1, 44.4, 45.6})
        void with_one_dioptre_of_it_a_toric_lens_is_worth_a_word(double flat) {
            assertThat(codes(RIGHT.powers(flat, flat + 1.00))).containsExactly(CORNEAL_ASTIGMATISM_TORIC);
            assertThat(codes(RIGHT.powers(flat, flat + 1.01))).containsExactly(CORNEAL_ASTIGMATISM_TORIC);
        }

        @ParameterizedTest
        @ValueSource(doubles = {41.5, 42, 42.3, 43.1, 44.4})
        void with_two_and_a_half_dioptres_the_measurement_still_passes(double flat) {
            assertThat(codes(RIGHT.powers(flat, flat + 2.49))).containsExactly(CORNEAL_ASTIGMATISM_TORIC);
            assertThat(codes(RIGHT.powers(flat, flat + 2.50))).containsExactly(CORNEAL_ASTIGMATISM_TORIC);
        }

        @ParameterizedTest
        @ValueSource(doubles = {41.5, 42, 42.3, 43.1, 44.4})
        void with_more_it_is_measured_again(double flat) {
            assertThat(codes(RIGHT.powers(flat, flat + 2.51)))
                    .containsExactly(CORNEAL_ASTIGMATISM_HIGH, CORNEAL_ASTIGMATISM_TORIC);
        }

        @Test
        void without_a_recorded_meridian_the_finding_says_so() {
            Keratometry cornea = new Keratometry(Millimetres.of(8.0), Millimetres.of(7.7), Optional.empty());
            assertThat(judge(RIGHT.cornea(cornea), LEFT.cornea(cornea).eye()))
                    .extracting(Finding::message)
                    .singleElement()
                    .asString()
                    .contains("an unrecorded meridian");
        }
    }

    @Nested
    class Given_a_fellow_eye {

        @ParameterizedTest
        @ValueSource(doubles = {21.8, 22.0, 22.7, 23.4, 24.1, 25.3})
        void up_to_the_limit_apart_in_length_they_pass(double length) {
            assertThat(judge(RIGHT.length(length), LEFT.length(length + 0.69).eye()))
                    .isEmpty();
            assertThat(judge(RIGHT.length(length), LEFT.length(length + 0.70).eye()))
                    .isEmpty();
        }

        @Test
        void further_apart_whichever_is_longer_they_differ() {
            assertThat(judge(RIGHT.length(23), LEFT.length(23.71).eye()))
                    .extracting(Finding::code)
                    .containsExactly(EYES_DIFFER_IN_LENGTH);
            assertThat(judge(RIGHT.length(23.71), LEFT.length(23).eye()))
                    .extracting(Finding::code)
                    .containsExactly(EYES_DIFFER_IN_LENGTH);
        }

        @ParameterizedTest
        @ValueSource(doubles = {41.1, 42, 43.3, 44.4, 45.7})
        void up_to_the_limit_apart_in_corneal_power_they_pass(double power) {
            Specimen eye = RIGHT.powers(power, power);
            assertThat(judge(eye, LEFT.powers(power + 0.89, power + 0.89).eye()))
                    .isEmpty();
            assertThat(judge(eye, LEFT.powers(power + 0.90, power + 0.90).eye()))
                    .isEmpty();
        }

        @ParameterizedTest
        @ValueSource(doubles = {-0.91, 0.91})
        void further_apart_in_corneal_power_they_differ(double apart) {
            Eye fellow = LEFT.powers(44 + apart, 44 + apart).eye();
            assertThat(judge(RIGHT.powers(44, 44), fellow))
                    .extracting(Finding::code)
                    .containsExactly(EYES_DIFFER_IN_CORNEAL_POWER);
        }

        @Test
        void that_was_not_measured_is_noted() {
            assertThat(judge(RIGHT, LEFT.unmeasured()))
                    .extracting(Finding::code)
                    .containsExactly(FELLOW_EYE_NOT_MEASURED);
        }

        @ParameterizedTest
        @ValueSource(doubles = {-1.00, -0.99, 0, 0.99, 1.00})
        void that_ended_near_its_prediction_is_no_news(double error) {
            assertThat(judge(RIGHT, LEFT.surprisedBy(error).eye())).isEmpty();
        }

        @Test
        void that_ended_far_from_it_either_way_is_explained_first() {
            assertThat(judge(RIGHT, LEFT.surprisedBy(1.01).eye()))
                    .extracting(Finding::message)
                    .containsExactly("The fellow eye ended +1.01 D from its prediction.");
            assertThat(judge(RIGHT, LEFT.surprisedBy(-1.01).eye()))
                    .extracting(Finding::message)
                    .containsExactly("The fellow eye ended -1.01 D from its prediction.");
        }

        @Test
        void that_surprised_but_was_not_measured_is_both() {
            assertThat(judge(RIGHT, LEFT.surprisedBy(-2).unmeasured()))
                    .extracting(Finding::code)
                    .containsExactly(FELLOW_EYE_SURPRISE, FELLOW_EYE_NOT_MEASURED);
        }
    }
}
