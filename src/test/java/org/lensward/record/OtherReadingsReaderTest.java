package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.DEVICE_REPORTED;
import static org.lensward.finding.FindingCode.DEVICE_REPORT_DIFFERS;
import static org.lensward.finding.FindingCode.LENGTH_CORRECTED_FOR_SOUND;
import static org.lensward.finding.FindingCode.UNIT_UNKNOWN;
import static org.lensward.finding.FindingCode.VALUE_IMPLAUSIBLE;

import java.util.List;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.eye.BeforeLaser;
import org.lensward.eye.BiometryMethod;
import org.lensward.eye.Laterality;
import org.lensward.eye.OtherReadings;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.quantity.Dioptres;

/** What only some plans ask for is read with its eye, its day and its unit, like any measurement. */
class OtherReadingsReaderTest {

    private static OtherReadings right(Bundles record) {
        return record.planning().eye().orElseThrow().other();
    }

    private static OtherReadings left(Bundles record) {
        return record.planning().fellow().orElseThrow().other();
    }

    private static Bundles with(String code, String value) {
        return Bundles.ordinary().add(WiderRecords.reading("reading", code, Bundles.dioptres(value)));
    }

    @Test
    void an_ordinary_record_says_nothing_else() {
        assertThat(right(Bundles.ordinary())).isEqualTo(OtherReadings.none());
    }

    @Nested
    class Given_a_refraction {

        @ParameterizedTest
        @ValueSource(strings = {"spherical-equivalent", "achieved-refraction"})
        void it_is_read_for_its_eye_alone(String code) {
            Bundles record = with(code, "-2.75");
            assertThat(right(record).refraction().orElseThrow().value()).isEqualTo(Dioptres.of(-2.75));
            assertThat(right(record).refraction().orElseThrow().evidence())
                    .isEqualTo(new Evidence("Observation/reading", "1", "value"));
            assertThat(left(record).refraction()).isEmpty();
        }

        @Test
        void the_latest_counts() {
            Observation later = WiderRecords.reading("later", "spherical-equivalent", Bundles.dioptres("1.50"));
            later.setEffective(new DateTimeType("2026-02-20"));
            Bundles record = with("spherical-equivalent", "-2.75").add(later);
            assertThat(right(record).refraction().orElseThrow().value()).isEqualTo(Dioptres.of(1.5));
        }

        @Test
        void one_that_has_not_come_yet_is_no_refraction() {
            Bundles record = with("spherical-equivalent", "-2.75")
                    .change(
                            Observation.class,
                            "reading",
                            reading -> reading.setEffective(new DateTimeType("2027-01-01")));
            assertThat(right(record).refraction()).isEmpty();
        }

        @Test
        void an_aphakic_one_is_an_eyes_and_a_greater_is_not() {
            assertThat(right(with("spherical-equivalent", "14")).refraction()).isPresent();
            Bundles record = with("spherical-equivalent", "44");
            assertThat(right(record).refraction()).isEmpty();
            assertThat(record.codes()).contains(VALUE_IMPLAUSIBLE);
        }
    }

    @Nested
    class Given_figures_from_before_a_laser {

        @Test
        void all_three_are_read_each_with_its_evidence() {
            BeforeLaser before = right(WiderRecords.lasered()).beforeLaser().orElseThrow();
            assertThat(before.power().value()).isEqualTo(Dioptres.of(44));
            assertThat(before.refraction().value()).isEqualTo(Dioptres.of(-6.5));
            assertThat(before.refractionAfter().value()).isEqualTo(Dioptres.of(-0.25));
            assertThat(before.power().evidence().resource()).isEqualTo("Observation/before-power");
        }

        @ParameterizedTest
        @ValueSource(strings = {"before-power", "before-refraction", "after-refraction"})
        void two_of_them_are_not_enough(String missing) {
            Bundles record = WiderRecords.lasered().remove("Observation/" + missing);
            assertThat(right(record).beforeLaser()).isEmpty();
            assertThat(WiderRecords.plan(record)
                            .lens()
                            .orElseThrow()
                            .chosen()
                            .view()
                            .method()
                            .words())
                    .isEqualTo("Haigis-L");
        }

        @Test
        void the_power_of_then_is_no_keratometry_of_now() {
            assertThat(WiderRecords.lasered()
                            .planning()
                            .eye()
                            .orElseThrow()
                            .biometry()
                            .orElseThrow()
                            .keratometry()
                            .value()
                            .meanPower()
                            .value())
                    .isEqualTo(38.25);
        }

        @Test
        void they_belong_to_what_the_plan_rests_on() {
            assertThat(WiderRecords.plan(WiderRecords.lasered()).basis())
                    .extracting(Evidence::resource)
                    .contains(
                            "Observation/before-power",
                            "Observation/before-refraction",
                            "Observation/after-refraction",
                            "Condition/cornea-flattened-by-laser");
        }
    }

    @Nested
    class Given_a_power_the_device_computed {

        @Test
        void it_is_read_with_its_model_and_what_the_device_calls_its_method() {
            Bundles record = Bundles.ordinary().add(WiderRecords.deviceReported("21.50", "DeviceDefinition/bag"));
            assertThat(right(record).deviceReports()).singleElement().satisfies(report -> {
                assertThat(report.lens()).isEqualTo("DeviceDefinition/bag");
                assertThat(report.method()).isEqualTo("the device's own way");
                assertThat(report.power().value()).isEqualTo(Dioptres.of(21.5));
            });
        }

        @ParameterizedTest
        @CsvSource({"DeviceDefinition/bag, true", "DeviceDefinition/sulcus, false"})
        void the_plan_shows_it_for_the_model_it_is_about(String lens, boolean shown) {
            Bundles record = Bundles.ordinary().add(WiderRecords.deviceReported("21.50", lens));
            List<Finding> shownFindings = WiderRecords.plan(record).findings().stream()
                    .filter(finding -> finding.code() == DEVICE_REPORTED || finding.code() == DEVICE_REPORT_DIFFERS)
                    .toList();
            assertThat(shownFindings.isEmpty()).isNotEqualTo(shown);
        }

        @Test
        void without_a_model_it_is_nobodys() {
            Observation report = WiderRecords.deviceReported("21.50", "DeviceDefinition/bag");
            report.getFocus().clear();
            assertThat(right(Bundles.ordinary().add(report)).deviceReports()).isEmpty();
        }
    }

    @Nested
    class Given_ultrasound {

        private static Bundles at(Shape shape, String value, String unit) {
            Bundles record = Bundles.ordinary(shape);
            String id = shape == Shape.COMPONENT ? "panel-right" : "length-right";
            String speaks = shape == Shape.FLAT ? "length-right" : "panel-right";
            return record.change(
                            Observation.class,
                            id,
                            length -> Shape.add(length, "sound-velocity", Bundles.quantity(value, unit)))
                    .change(Observation.class, speaks, WiderRecords.byUltrasound("111751"))
                    .change(DeviceDefinition.class, "bag", OtherReadingsReaderTest::forImmersion);
        }

        @ParameterizedTest
        @EnumSource(Shape.class)
        void the_velocity_is_read_with_the_length_in_every_shape(Shape shape) {
            var biometry = at(shape, "1532", "m/s")
                    .planning()
                    .eye()
                    .orElseThrow()
                    .biometry()
                    .orElseThrow();
            assertThat(biometry.method()).isEqualTo(BiometryMethod.IMMERSION_ULTRASOUND);
            assertThat(biometry.details().soundVelocity().orElseThrow().value().value())
                    .isEqualTo(1532);
        }

        @Test
        void the_plan_is_made_with_the_corrected_length() {
            var plan = WiderRecords.plan(at(Shape.FLAT, "1532", "m/s"));
            assertThat(plan.findings()).extracting(Finding::code).contains(LENGTH_CORRECTED_FOR_SOUND);
            assertThat(plan.lens()
                            .orElseThrow()
                            .biometry()
                            .axialLength()
                            .value()
                            .value())
                    .isGreaterThan(23.5);
        }

        @Test
        void a_velocity_in_another_unit_is_not_guessed_at() {
            assertThat(at(Shape.FLAT, "1.532", "km/s").codes()).contains(UNIT_UNKNOWN);
            assertThat(at(Shape.FLAT, "1.532", "m/s").codes()).contains(VALUE_IMPLAUSIBLE);
        }
    }

    private static void forImmersion(DeviceDefinition lens) {
        lens.getProperty().stream()
                .filter(each -> each.getValueCode().stream()
                        .anyMatch(code -> Codes.has(code, Systems.BIOMETRY_METHOD, "optical")))
                .forEach(each -> each.getValueCode().set(0, Bundles.coded(Systems.DICOM, "111751")));
    }

    @Nested
    class Given_a_model_with_cylinders {

        @Test
        void each_labelled_cylinder_is_read() {
            var model = Bundles.ordinary()
                    .add(WiderRecords.toricBag())
                    .planning()
                    .catalogue()
                    .named("DeviceDefinition/bag")
                    .orElseThrow();
            assertThat(model.isToric()).isTrue();
            assertThat(model.cylinders()).extracting(Dioptres::value).containsExactly(1.0, 1.5, 2.25, 3.0);
        }

        @Test
        void a_cylinder_without_a_unit_leaves_the_model_out() {
            DeviceDefinition lens = WiderRecords.toricBag();
            LensDefinitions.find(lens, "cylinders").addValueQuantity(new Quantity().setValue(3.75));
            Bundles record = Bundles.ordinary().add(lens);
            assertThat(record.planning().catalogue().named("DeviceDefinition/bag"))
                    .isEmpty();
            assertThat(record.found()).extracting(Finding::message).anySatisfy(message -> assertThat(message)
                    .contains("the bag lens"));
        }

        @Test
        void a_negative_cylinder_leaves_the_model_out() {
            DeviceDefinition lens = WiderRecords.toricBag();
            LensDefinitions.find(lens, "cylinders").addValueQuantity(Bundles.dioptres("-3.75"));
            assertThat(Bundles.ordinary().add(lens).planning().catalogue().named("DeviceDefinition/bag"))
                    .isEmpty();
        }
    }

    @Test
    void the_eyes_are_told_apart() {
        assertThat(WiderRecords.lasered().planning().fellow().orElseThrow().side())
                .isEqualTo(Laterality.LEFT);
        assertThat(left(WiderRecords.lasered()).beforeLaser()).isEmpty();
    }
}
