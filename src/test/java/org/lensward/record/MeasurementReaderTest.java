package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.AXIAL_LENGTH_MISSING;
import static org.lensward.finding.FindingCode.DATE_IN_FUTURE;
import static org.lensward.finding.FindingCode.DATE_MISSING;
import static org.lensward.finding.FindingCode.INDEX_MISSING;
import static org.lensward.finding.FindingCode.KERATOMETRY_MISSING;
import static org.lensward.finding.FindingCode.MEASURED_MORE_THAN_ONCE;
import static org.lensward.finding.FindingCode.MEASUREMENTS_CONTRADICT;
import static org.lensward.finding.FindingCode.MEASUREMENT_NOT_FINAL;
import static org.lensward.finding.FindingCode.MERIDIANS_SWAPPED;
import static org.lensward.finding.FindingCode.METHOD_UNKNOWN;
import static org.lensward.finding.FindingCode.UNIT_NORMALISED;
import static org.lensward.finding.FindingCode.UNIT_UNKNOWN;
import static org.lensward.finding.FindingCode.VALUE_IMPLAUSIBLE;
import static org.lensward.finding.FindingCode.VALUE_MISSING;

import java.util.function.Consumer;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.StringType;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.eye.Biometry;
import org.lensward.eye.BiometryMethod;
import org.lensward.eye.Eye;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** One measurement at a time: unit, value, date, status, method. */
class MeasurementReaderTest {

    private final Bundles record = Bundles.ordinary();

    private void length(Consumer<Observation> change) {
        record.change(Observation.class, "length-right", change);
    }

    private void cornea(Consumer<Observation> change) {
        record.change(Observation.class, "cornea-right", change);
    }

    private Biometry biometry() {
        return record.planning().eye().flatMap(Eye::biometry).orElseThrow();
    }

    private void assertNoLength(FindingCode reason, String evidence) {
        assertThat(record.codes()).containsExactly(reason, AXIAL_LENGTH_MISSING);
        assertThat(record.found().get(0).evidence())
                .extracting(Object::toString)
                .containsExactly(evidence);
        assertThat(record.planning().eye().flatMap(Eye::biometry)).isEmpty();
    }

    /** Unified Code for Units of Measure: mm, um, cm. */
    @Nested
    class Given_a_unit {

        @ParameterizedTest
        @CsvSource({"23.5, mm", "23500, um", "2.35, cm"})
        void of_ucum_it_is_read(String value, String unit) {
            length(each -> each.setValue(Bundles.quantity(value, unit)));
            assertThat(biometry().axialLength().value().value()).isCloseTo(23.5, within(1e-9));
            assertThat(record.found()).isEmpty();
        }

        @ParameterizedTest
        @ValueSource(strings = {"D", "dpt", "diop"})
        void that_leaves_no_doubt_it_is_read_with_a_note(String unit) {
            cornea(each -> each.getComponentFirstRep().setValue(Bundles.quantity("43.00", unit)));
            assertThat(record.codes()).containsExactly(UNIT_NORMALISED);
            assertThat(record.found().get(0).message())
                    .isEqualTo("The flat corneal power was recorded in '" + unit
                            + "', which is not a valid unit code, and was read as [diop].");
            assertThat(biometry().keratometry().value().flatPower().value()).isCloseTo(43, within(1e-9));
        }

        @Test
        void of_an_angle_in_brackets_it_is_read_with_a_note() {
            cornea(each -> each.getComponent().get(2).setValue(Bundles.quantity("90", "[deg]")));
            assertThat(record.codes()).containsExactly(UNIT_NORMALISED);
        }

        @ParameterizedTest
        @ValueSource(strings = {"m", "inch", "[diop]", "MM"})
        void nobody_should_guess_it_is_refused(String unit) {
            length(each -> each.setValue(Bundles.quantity("23.5", unit)));
            assertNoLength(UNIT_UNKNOWN, "Observation/length-right.value.code");
            assertThat(record.found().get(0).message())
                    .isEqualTo("The axial length has the unit '" + unit + "', which is not one of: cm, mm, um.");
        }

        @Test
        void left_out_it_is_refused() {
            length(each -> each.setValue(new Quantity().setValue(23.5)));
            assertNoLength(UNIT_UNKNOWN, "Observation/length-right.value.code");
        }

        @Test
        void in_a_component_the_finding_names_the_component() {
            cornea(each -> each.getComponent().get(1).setValue(Bundles.quantity("43.25", "mm")));
            assertThat(record.codes()).containsExactly(UNIT_UNKNOWN, KERATOMETRY_MISSING);
            assertThat(record.found().get(0).evidence())
                    .extracting(Object::toString)
                    .containsExactly("Observation/cornea-right.component[1].value.code");
        }
    }

    @Nested
    class Given_a_value {

        @Test
        void missing_it_is_refused() {
            length(each -> each.setValue(null));
            assertNoLength(VALUE_MISSING, "Observation/length-right.value");
        }

        @Test
        void of_another_kind_it_is_refused() {
            length(each -> each.setValue(new StringType("23.5 mm")));
            assertNoLength(VALUE_MISSING, "Observation/length-right.value");
        }

        @Test
        void that_is_only_a_bound_it_is_refused() {
            length(each ->
                    each.setValue(Bundles.quantity("23.5", "mm").setComparator(Quantity.QuantityComparator.LESS_THAN)));
            assertNoLength(VALUE_MISSING, "Observation/length-right.value");
        }

        @ParameterizedTest
        @CsvSource({"2.35, mm", "235, mm", "23.5, um", "-23.5, mm"})
        void no_eye_can_have_it_is_refused(String value, String unit) {
            length(each -> each.setValue(Bundles.quantity(value, unit)));
            assertNoLength(VALUE_IMPLAUSIBLE, "Observation/length-right.value");
        }
    }

    @Nested
    class Given_a_date {

        @Test
        void missing_the_measurement_is_refused() {
            length(each -> each.setEffective(null));
            assertNoLength(DATE_MISSING, "Observation/length-right.effective");
        }

        @Test
        void of_tomorrow_the_measurement_is_refused() {
            length(each -> each.setEffective(new DateTimeType("2026-03-03")));
            assertNoLength(DATE_IN_FUTURE, "Observation/length-right.effective");
        }

        @Test
        void of_today_it_is_read() {
            length(each -> each.setEffective(new DateTimeType("2026-03-02")));
            assertThat(record.found()).isEmpty();
        }

        @Test
        void late_in_the_evening_it_is_the_day_where_it_was_written() {
            length(each -> each.setEffective(new DateTimeType("2026-02-17T23:30:00-08:00")));
            cornea(each -> each.setEffective(new DateTimeType("2026-02-17")));
            assertThat(biometry().measuredOn()).hasToString("2026-02-17");
        }

        @Test
        void of_a_month_alone_it_counts_from_its_first_day() {
            length(each -> each.setEffective(new DateTimeType("2026-02")));
            assertThat(biometry().measuredOn()).hasToString("2026-02-01");
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = ObservationStatus.class,
            names = {"PRELIMINARY", "REGISTERED", "UNKNOWN"})
    void what_is_not_final_is_noted_and_not_used(ObservationStatus status) {
        length(each -> each.setStatus(status));
        assertNoLength(MEASUREMENT_NOT_FINAL, "Observation/length-right.status");
    }

    @ParameterizedTest
    @EnumSource(
            value = ObservationStatus.class,
            names = {"ENTEREDINERROR", "CANCELLED"})
    void what_is_withdrawn_is_as_if_it_were_not_there(ObservationStatus status) {
        length(each -> each.setStatus(status));
        assertThat(record.codes()).containsExactly(AXIAL_LENGTH_MISSING);
    }

    @ParameterizedTest
    @EnumSource(
            value = ObservationStatus.class,
            names = {"AMENDED", "CORRECTED"})
    void what_was_corrected_is_used(ObservationStatus status) {
        length(each -> each.setStatus(status));
        assertThat(record.found()).isEmpty();
    }

    /** DICOM PS3.16: 111750 contact, 111751 immersion ultrasound. */
    @Nested
    class Given_a_method {

        @ParameterizedTest
        @CsvSource({"111750, CONTACT_ULTRASOUND", "111751, IMMERSION_ULTRASOUND"})
        void of_dicom_it_is_read(String code, BiometryMethod method) {
            length(each -> each.setMethod(Bundles.coded(Systems.DICOM, code)));
            assertThat(biometry().method()).isEqualTo(method);
        }

        @Test
        void missing_the_length_is_refused() {
            length(each -> each.setMethod(new CodeableConcept()));
            assertNoLength(METHOD_UNKNOWN, "Observation/length-right.method");
        }

        @Test
        void in_words_alone_the_length_is_refused() {
            length(each -> each.setMethod(new CodeableConcept().setText("optical")));
            assertNoLength(METHOD_UNKNOWN, "Observation/length-right.method");
        }
    }

    @Nested
    class Given_a_cornea {

        private void assertNoCornea(FindingCode reason) {
            assertThat(record.codes()).containsExactly(reason, KERATOMETRY_MISSING);
        }

        @Test
        void in_dioptres_without_its_index_it_is_refused() {
            cornea(each -> each.getComponent().remove(3));
            assertNoCornea(INDEX_MISSING);
        }

        @Test
        void by_another_index_its_radius_counts() {
            cornea(each -> each.getComponent().get(3).setValue(Bundles.quantity("1.332", "1")));
            // r = 332 / 43.00 = 7.7209 mm
            assertThat(biometry().keratometry().value().flatRadius().value()).isCloseTo(332 / 43.0, within(1e-9));
        }

        @Test
        void in_radii_it_needs_no_index() {
            cornea(each -> {
                each.getComponent().clear();
                Shape.add(each, "keratometry-flat-radius", Bundles.quantity("7.85", "mm"));
                Shape.add(each, "keratometry-steep-radius", Bundles.quantity("7.80", "mm"));
            });
            assertThat(record.found()).isEmpty();
            // K = 337.5 / r
            assertThat(biometry().keratometry().value().steepPower().value()).isCloseTo(337.5 / 7.8, within(1e-9));
        }

        @Test
        void with_its_meridians_swapped_it_is_refused() {
            cornea(each -> each.getComponentFirstRep().setValue(Bundles.dioptres("44.00")));
            assertNoCornea(MERIDIANS_SWAPPED);
        }

        @Test
        void with_one_meridian_it_is_refused() {
            cornea(each -> each.getComponent().remove(1));
            assertNoCornea(VALUE_MISSING);
        }
    }

    @Nested
    class Given_two_lengths_of_one_day {

        private void second(String value) {
            Observation second = Shape.placed(Shape.observation("second", "axial-length"), "1290032005");
            record.add(second.setValue(Bundles.quantity(value, "mm"))
                    .setMethod(Bundles.ours("biometry-method", "optical")));
        }

        /** 0.3 mm is the policy's. */
        @Test
        void that_agree_one_is_used_and_both_are_told() {
            second("23.79");
            assertThat(record.codes()).containsExactly(MEASURED_MORE_THAN_ONCE);
            assertThat(record.found().get(0).evidence())
                    .extracting(Object::toString)
                    .containsExactly("Observation/length-right.value", "Observation/second.value");
            assertThat(biometry().axialLength().value().value()).isEqualTo(23.5);
        }

        @Test
        void that_disagree_neither_is_used() {
            second("23.81");
            assertThat(record.codes()).containsExactly(MEASUREMENTS_CONTRADICT);
            assertThat(record.found().get(0).evidence())
                    .extracting(Object::toString)
                    .containsExactly("Observation/length-right.value", "Observation/second.value");
            assertThat(record.planning().eye().flatMap(Eye::biometry)).isEmpty();
        }
    }

    @Test
    void what_is_doubtful_of_the_fellow_eye_does_not_touch_this_plan() {
        record.change(Observation.class, "length-left", each -> each.setEffective(null));
        assertThat(record.found()).isEmpty();
        assertThat(record.planning().fellow().flatMap(Eye::biometry)).isEmpty();
    }

    @Test
    void another_patients_measurements_are_nobodys_here() {
        length(each -> each.getSubject().setReference("Patient/p2"));
        assertThat(record.found()).extracting(Finding::code).containsExactly(AXIAL_LENGTH_MISSING);
    }
}
