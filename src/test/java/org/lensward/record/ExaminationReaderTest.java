package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.EXAMINATION_NOT_USED;

import java.time.LocalDate;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Examination;
import org.lensward.finding.Severity;
import org.lensward.quantity.CellsPerSquareMillimetre;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.MillimetresOfMercury;
import org.lensward.quantity.PureNumber;

/** What was measured for the operation itself. LOINC codes and units are UCUM's; the right eye is booked. */
class ExaminationReaderTest {

    private static Examination right(Bundles record) {
        return record.planning().eye().orElseThrow().examination();
    }

    private static Examination left(Bundles record) {
        return record.planning().fellow().orElseThrow().examination();
    }

    private static Observation reading(String code, String value, String unit) {
        return WiderRecords.reading("reading", code, Bundles.quantity(value, unit));
    }

    private static Observation loinc(String code, String value, String unit) {
        Observation reading = reading("none", value, unit);
        reading.setBodySite(new CodeableConcept());
        return reading.setCode(
                new CodeableConcept(new Coding().setSystem(Systems.LOINC).setCode(code)));
    }

    @Test
    void an_ordinary_record_says_nothing_of_it() {
        assertThat(right(Bundles.ordinary())).isEqualTo(Examination.none());
    }

    @Test
    void each_reading_is_of_its_eye_with_its_unit() {
        Bundles record = Bundles.ordinary();
        record.add(WiderRecords.reading("p", "intraocular-pressure", Bundles.quantity("16", "mm[Hg]")))
                .add(WiderRecords.reading("d", "endothelial-density", Bundles.quantity("2450", "/mm2")))
                .add(WiderRecords.reading("t", "corneal-thickness", Bundles.quantity("545", "um")))
                .add(WiderRecords.reading("z", "zonule-loss", Bundles.quantity("2", "1")))
                .add(WiderRecords.reading("o", "opening-diameter", Bundles.quantity("5.2", "mm")))
                .add(WiderRecords.reading("c", "opening-decentration", Bundles.quantity("0.3", "mm")));
        Examination seen = right(record);
        assertThat(seen.pressure().orElseThrow().value()).isEqualTo(MillimetresOfMercury.of(16));
        assertThat(seen.endothelialDensity().orElseThrow().value()).isEqualTo(CellsPerSquareMillimetre.of(2450));
        assertThat(seen.cornealThickness().orElseThrow().value().value()).isEqualTo(0.545);
        assertThat(seen.zonuleLoss().orElseThrow().value()).isEqualTo(PureNumber.of(2));
        assertThat(seen.openingDiameter().orElseThrow().value()).isEqualTo(Millimetres.of(5.2));
        assertThat(seen.openingDecentration().orElseThrow().value()).isEqualTo(Millimetres.of(0.3));
        assertThat(seen.pressure().orElseThrow().evidence()).hasToString("Observation/p.value");
        assertThat(left(record)).isEqualTo(Examination.none());
        assertThat(record.found()).isEmpty();
    }

    /** Sides as LOINC's own names give them. */
    @ParameterizedTest
    @CsvSource({"79892-6, mm[Hg], true", "79893-4, mm[Hg], false", "64744-6, um, true", "66068-8, um, false"})
    void a_sided_loinc_code_is_a_side(String code, String unit, boolean ofRight) {
        Bundles record = Bundles.ordinary().add(loinc(code, unit.equals("um") ? "540" : "17", unit));
        assertThat(right(record).equals(Examination.none())).isNotEqualTo(ofRight);
        assertThat(left(record).equals(Examination.none())).isEqualTo(ofRight);
    }

    /** LOINC 6301-6 and 34714-6: INR in plasma and in blood. */
    @ParameterizedTest
    @CsvSource({"6301-6, 1", "34714-6, {INR}"})
    void the_inr_is_the_persons_and_needs_no_side(String code, String unit) {
        Bundles record = Bundles.ordinary().add(loinc(code, "2.4", unit));
        assertThat(right(record).clotting().orElseThrow().measured().value()).isEqualTo(PureNumber.of(2.4));
        assertThat(right(record).clotting().orElseThrow().day()).isInstanceOf(LocalDate.class);
        assertThat(left(record).clotting()).isPresent();
        assertThat(record.found()).isEmpty();
    }

    @Test
    void the_latest_stands() {
        Observation old = WiderRecords.reading("old", "intraocular-pressure", Bundles.quantity("30", "mm[Hg]"));
        old.setEffective(new DateTimeType("2025-01-01"));
        Bundles record = Bundles.ordinary().add(old).add(reading("intraocular-pressure", "14", "mm[Hg]"));
        assertThat(right(record).pressure().orElseThrow().value()).isEqualTo(MillimetresOfMercury.of(14));
    }

    @Nested
    class Given_a_doubtful_one {

        private void refused(Observation reading, String why) {
            Bundles record = Bundles.ordinary().add(reading);
            assertThat(right(record)).isEqualTo(Examination.none());
            assertThat(record.codes()).contains(EXAMINATION_NOT_USED);
            assertThat(record.found()).allMatch(finding -> finding.severity() != Severity.WITHHOLDS);
            assertThat(record.found().get(0).message()).contains(why);
        }

        @Test
        void without_a_side_it_is_left_out() {
            refused(loinc("56844-4", "16", "mm[Hg]"), "which one eye");
        }

        @Test
        void of_two_sides_it_is_left_out() {
            Observation both = loinc("79892-6", "16", "mm[Hg]");
            refused(both.setBodySite(Bundles.snomed("1290031003")), "two different eyes");
        }

        @Test
        void in_an_unknown_unit_it_is_left_out() {
            refused(reading("intraocular-pressure", "16", "kPa"), "'kPa'");
        }

        @Test
        void beyond_what_an_eye_can_have_it_is_left_out() {
            refused(reading("endothelial-density", "24500", "/mm2"), "24500");
        }

        @Test
        void of_tomorrow_it_is_left_out() {
            Observation tomorrow = reading("intraocular-pressure", "16", "mm[Hg]");
            refused((Observation) tomorrow.setEffective(new DateTimeType("2099-01-01")), "not come yet");
        }

        @Test
        void without_a_number_it_is_left_out() {
            refused(reading("intraocular-pressure", "16", "mm[Hg]").setValue(new Quantity()), "no value");
        }
    }
}
