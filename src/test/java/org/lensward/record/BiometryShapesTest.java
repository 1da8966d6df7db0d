package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.MEASUREMENTS_CONTRADICT;
import static org.lensward.finding.FindingCode.VALUE_MISSING;

import java.time.LocalDate;
import java.util.Optional;
import org.hl7.fhir.r4.model.Observation;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.eye.Biometry;
import org.lensward.eye.BiometryMethod;
import org.lensward.eye.Eye;
import org.lensward.eye.Measured;
import org.lensward.plan.PlanState;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Millimetres;

/** One biometry, however it is sent. */
class BiometryShapesTest {

    private static Biometry biometry(Optional<Eye> eye) {
        return eye.flatMap(Eye::biometry).orElseThrow();
    }

    @ParameterizedTest
    @EnumSource
    void the_numbers_are_those_sent(Shape shape) {
        Biometry right = biometry(Bundles.ordinary(shape).planning().eye());
        assertThat(right.axialLength().value()).isEqualTo(Millimetres.of(23.50));
        assertThat(right.method()).isEqualTo(BiometryMethod.OPTICAL);
        assertThat(right.measuredOn()).isEqualTo(LocalDate.of(2026, 2, 16));
        assertThat(right.keratometry().value().flatPower().value()).isCloseTo(43, within(1e-9));
        assertThat(right.keratometry().value().steepPower().value()).isCloseTo(43.25, within(1e-9));
        assertThat(right.keratometry().value().steepMeridian()).contains(Degrees.of(90));
        assertThat(right.details().anteriorChamberDepth().map(Measured::value)).contains(Millimetres.of(3.1));
        assertThat(right.details().lengthScatter().map(Measured::value)).contains(Millimetres.of(0.02));
        assertThat(biometry(Bundles.ordinary(shape).planning().fellow())
                        .axialLength()
                        .value())
                .isEqualTo(Millimetres.of(23.45));
    }

    @ParameterizedTest
    @EnumSource
    void nothing_is_doubted_and_the_plan_is_ready_with_the_same_lens(Shape shape) {
        Bundles record = Bundles.ordinary(shape);
        assertThat(record.found()).isEmpty();
        assertThat(record.plan().state()).isEqualTo(PlanState.READY);
        assertThat(record.plan().lens().orElseThrow().kit().primary().power())
                .isEqualTo(Bundles.ordinary()
                        .plan()
                        .lens()
                        .orElseThrow()
                        .kit()
                        .primary()
                        .power());
    }

    @Nested
    class Given_a_panel {

        private final Bundles record = Bundles.ordinary(Shape.PANEL);

        @Test
        void its_version_belongs_to_the_plan_for_it_lent_side_date_and_method() {
            String before = record.plan().fingerprint().hex();
            record.change(
                    Observation.class, "panel-right", each -> each.setMethod(Bundles.coded(Systems.DICOM, "111751")));
            assertThat(record.plan().fingerprint().hex()).isNotEqualTo(before);
            assertThat(biometry(record.planning().eye()).method()).isEqualTo(BiometryMethod.IMMERSION_ULTRASOUND);
        }

        @Test
        void entered_in_error_lends_nothing() {
            record.change(
                    Observation.class,
                    "panel-right",
                    each -> each.setStatus(Observation.ObservationStatus.ENTEREDINERROR));
            assertThat(record.planning().eye().flatMap(Eye::biometry)).isEmpty();
        }
    }

    @Nested
    class Given_keratometry_sent_flat {

        private final Bundles record = Bundles.ordinary().remove("Observation/cornea-right");

        Given_keratometry_sent_flat() {
            piece("flat", "keratometry-flat-power", "43.00", "[diop]");
            piece("steep", "keratometry-steep-power", "43.25", "[diop]");
            piece("index", "keratometric-index", "1.3375", "1");
        }

        private void piece(String id, String code, String value, String unit) {
            Observation piece = Shape.placed(Shape.observation(id, code), "1290032005");
            record.add(piece.setValue(Bundles.quantity(value, unit)));
        }

        @Test
        void the_pieces_of_one_eye_and_day_are_one_cornea() {
            assertThat(record.found()).isEmpty();
            assertThat(biometry(record.planning().eye())
                            .keratometry()
                            .value()
                            .meanPower()
                            .value())
                    .isCloseTo(43.125, within(1e-9));
        }

        @Test
        void every_piece_belongs_to_the_plan() {
            assertThat(record.plan().basis())
                    .extracting(evidence -> evidence.resource())
                    .contains("Observation/flat", "Observation/steep", "Observation/index");
        }

        @Test
        void a_second_value_is_not_passed_over() {
            piece("flat-2", "keratometry-flat-power", "45.00", "[diop]");
            assertThat(record.codes()).contains(VALUE_MISSING);
        }

        @Test
        void two_whole_sets_that_differ_contradict() {
            piece("flat-2", "keratometry-flat-power", "45.00", "[diop]");
            piece("steep-2", "keratometry-steep-power", "45.25", "[diop]");
            piece("index-2", "keratometric-index", "1.3375", "1");
            assertThat(record.codes()).containsExactly(MEASUREMENTS_CONTRADICT);
        }
    }

    @Test
    void two_values_under_one_code_are_none() {
        Bundles record = Bundles.ordinary()
                .change(
                        Observation.class,
                        "cornea-right",
                        cornea -> Shape.add(cornea, "keratometry-flat-power", Bundles.dioptres("42.00")));
        assertThat(record.codes()).contains(VALUE_MISSING);
        assertThat(record.planning().eye().flatMap(Eye::biometry)).isEmpty();
    }
}
