package org.lensward.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.eye.BiometryMethod.CONTACT_ULTRASOUND;
import static org.lensward.eye.BiometryMethod.IMMERSION_ULTRASOUND;
import static org.lensward.finding.FindingCode.CONSTANT_MISSING;
import static org.lensward.finding.FindingCode.CONTACT_LENS_WORN_LATELY;
import static org.lensward.finding.FindingCode.CORNEAL_READINGS_SCATTERED;
import static org.lensward.finding.FindingCode.LENGTH_CORRECTED_FOR_CONTACT;
import static org.lensward.finding.FindingCode.TARGET_HYPEROPIC;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Measured;
import org.lensward.eye.OtherReadings;
import org.lensward.eye.Specimen;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.lens.Lenses;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;

/** How the cornea was read, what a contact reading may borrow, and a target that may have the wrong sign. Limits: common practice. */
class ReadingsGatesTest {

    private static List<FindingCode> codes(EyePlan plan) {
        return plan.findings().stream().map(Finding::code).toList();
    }

    private static OtherReadings cornea(Optional<Double> scatter, Optional<Double> soft, Optional<Double> rigid) {
        return new OtherReadings(
                Optional.empty(),
                Optional.empty(),
                List.of(),
                scatter.map(value -> new Measured<>(Dioptres.of(value), Specimen.LENGTH)),
                soft.map(value -> new Measured<>(PureNumber.of(value), Specimen.LENGTH)),
                rigid.map(value -> new Measured<>(PureNumber.of(value), Specimen.LENGTH)));
    }

    @ParameterizedTest
    @CsvSource({"0.25, false", "0.26, true"})
    void keratometer_readings_may_scatter_so_far(double scatter, boolean found) {
        EyePlan plan =
                Cases.plan(Cases.ordinary().recorded(cornea(Optional.of(scatter), Optional.empty(), Optional.empty())));
        assertThat(codes(plan).contains(CORNEAL_READINGS_SCATTERED)).isEqualTo(found);
        assertThat(plan.state()).isEqualTo(found ? PlanState.PROVISIONAL : PlanState.READY);
    }

    @ParameterizedTest
    @CsvSource({"6, true", "7, false"})
    void soft_contact_lenses_stay_out_a_week(double days, boolean found) {
        EyePlan plan =
                Cases.plan(Cases.ordinary().recorded(cornea(Optional.empty(), Optional.of(days), Optional.empty())));
        assertThat(codes(plan).contains(CONTACT_LENS_WORN_LATELY)).isEqualTo(found);
    }

    @ParameterizedTest
    @CsvSource({"27, true", "28, false"})
    void rigid_contact_lenses_stay_out_four_weeks(double days, boolean found) {
        EyePlan plan =
                Cases.plan(Cases.ordinary().recorded(cornea(Optional.empty(), Optional.empty(), Optional.of(days))));
        assertThat(codes(plan).contains(CONTACT_LENS_WORN_LATELY)).isEqualTo(found);
    }

    @ParameterizedTest
    @CsvSource({"0.50, false", "0.51, true", "2.50, true", "-2.50, false"})
    void a_hyperopic_target_waits_for_someone_to_check_its_sign(double target, boolean found) {
        EyePlan plan = Cases.plan(Cases.ordinary().aimingAt(target));
        assertThat(codes(plan).contains(TARGET_HYPEROPIC)).isEqualTo(found);
        assertThat(plan.state() == PlanState.PROVISIONAL).isEqualTo(found);
    }

    @Nested
    class Given_a_length_by_contact_ultrasound {

        private final Cases measured = Cases.ordinary().measured(eye -> eye.by(CONTACT_ULTRASOUND));

        @Test
        void it_borrows_immersions_constants_once_lengthened_by_what_contact_reads_short() {
            EyePlan plan = Cases.plan(measured.catalogue(
                    Lenses.measuredBy(Lenses.bag(), IMMERSION_ULTRASOUND),
                    Lenses.measuredBy(Lenses.sulcus(), IMMERSION_ULTRASOUND),
                    Lenses.measuredBy(Lenses.anteriorChamber(), IMMERSION_ULTRASOUND)));
            assertThat(codes(plan)).contains(LENGTH_CORRECTED_FOR_CONTACT);
            assertThat(plan.state()).isEqualTo(PlanState.PROVISIONAL);
            // 0.20 mm: secondary source, see ContactUltrasound
            assertThat(plan.lens()
                            .orElseThrow()
                            .biometry()
                            .axialLength()
                            .value()
                            .value())
                    .isCloseTo(23.5 + 0.20, within(1e-9));
        }

        @Test
        void it_is_no_surer_for_having_been_corrected() {
            EyePlan immersion = Cases.plan(Cases.ordinary()
                    .measured(eye -> eye.by(IMMERSION_ULTRASOUND))
                    .catalogue(Lenses.measuredBy(Lenses.bag(), IMMERSION_ULTRASOUND)));
            EyePlan contact = Cases.plan(measured.catalogue(Lenses.measuredBy(Lenses.bag(), IMMERSION_ULTRASOUND)));
            assertThat(contact.lens().orElseThrow().chosen().uncertainty().deviation())
                    .isGreaterThan(immersion
                            .lens()
                            .orElseThrow()
                            .chosen()
                            .uncertainty()
                            .deviation());
        }

        @Test
        void it_borrows_nothing_from_light() {
            EyePlan plan = Cases.plan(measured);
            assertThat(codes(plan)).contains(CONSTANT_MISSING);
            assertThat(plan.state()).isEqualTo(PlanState.WITHHELD);
        }

        @Test
        void its_own_constants_come_first_and_nothing_is_corrected() {
            EyePlan plan = Cases.plan(measured.catalogue(Lenses.measuredBy(Lenses.bag(), CONTACT_ULTRASOUND)));
            assertThat(codes(plan)).doesNotContain(LENGTH_CORRECTED_FOR_CONTACT);
            assertThat(plan.lens()
                            .orElseThrow()
                            .biometry()
                            .axialLength()
                            .value()
                            .value())
                    .isEqualTo(23.5);
        }
    }
}
