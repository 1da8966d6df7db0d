package org.lensward.record.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.PATIENT_IDENTIFIER_NOT_COUNTED;
import static org.lensward.finding.FindingCode.SITE_CODE_AMBIGUOUS;
import static org.lensward.finding.FindingCode.SITE_EYE_CONTRADICTED;
import static org.lensward.record.site.Site.doubts;
import static org.lensward.record.site.Site.first;
import static org.lensward.record.site.Site.names;
import static org.lensward.record.site.Site.translate;
import static org.lensward.record.site.SiteEye.LEFT;
import static org.lensward.record.site.SiteEye.RIGHT;

import ca.uhn.fhir.context.FhirContext;
import java.math.BigDecimal;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Medication;
import org.hl7.fhir.r4.model.MedicationStatement;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.record.Fhir;
import org.lensward.record.UnitKind;
import org.lensward.record.site.SiteTranslation.Translated;

/** What stands beside a local code once it is translated. Codes are SNOMED CT's, LOINC's and DICOM's as their publishers define them. */
class SiteTranslationTest {

    private static final String EYE_R = "http://snomed.info/sct|1290032005";
    private static final String EYE_L = "http://snomed.info/sct|1290031003";
    private static final String LENGTH_R = "http://loinc.org|64742-0";
    private static final FhirContext FHIR = Fhir.r4();

    @Test
    void the_standard_code_stands_beside_the_local_one_and_the_original_is_not_touched() {
        Observation length = Site.length(Site.concept("AL"), Site.concept(EYE_R), "mm");
        length.getMeta().setVersionId("7");
        Bundle record = Site.bundle(length);
        Translated translated =
                new SiteTranslation(Site.codes(Site.code("AL", "measurement|axial-length", null))).translate(record);
        Observation read = first(Observation.class, translated);
        assertThat(names(read.getCode()))
                .containsExactly(
                        "https://site.example/codes|AL",
                        "https://lensward.org/fhir/CodeSystem/measurement|axial-length");
        assertThat(read.getMeta().getVersionId()).isEqualTo("7");
        assertThat(read.getId()).isEqualTo("length");
        assertThat(names(length.getCode())).containsExactly("https://site.example/codes|AL");
        assertThat(translated.doubts()).isEmpty();
    }

    @Test
    void a_code_under_another_system_or_none_is_another_code() {
        SiteCodes codes = Site.codes(Site.code("AL", "measurement|axial-length", null));
        for (String other : List.of("https://other.example|AL", "|AL", "https://site.example/codes|al")) {
            CodeableConcept code = Site.concept(other);
            Observation read = first(Observation.class, translate(codes, Site.length(code, Site.concept(EYE_R), "mm")));
            assertThat(read.getCode().getCoding()).hasSize(1);
        }
    }

    @Test
    void a_code_without_a_system_is_mapped_where_the_map_says_so() {
        SiteCodes codes = new SiteCodes(
                "site-1",
                List.of(new MappedCode(new LocalCode("", "AL"), Meaning.parse("measurement|axial-length"), null)),
                List.of(),
                List.of(),
                List.of(),
                List.of());
        CodeableConcept code = new CodeableConcept();
        code.addCoding().setCode("AL");
        Observation read = first(Observation.class, translate(codes, Site.length(code, Site.concept(EYE_R), "mm")));
        assertThat(read.getCode().getCoding()).hasSize(2);
    }

    @Nested
    class Given_a_code_that_carries_the_eye {

        private final SiteCodes codes = Site.codes(
                Site.code("AL-R", "measurement|axial-length", RIGHT), Site.code("DX-R", "sign|glaucoma", RIGHT));

        @Test
        void the_eye_goes_where_eyes_are_read() {
            Translated translated = translate(codes, Site.length(Site.concept("AL-R"), new CodeableConcept(), "mm"));
            assertThat(names(first(Observation.class, translated).getBodySite()))
                    .containsExactly(EYE_R);
        }

        @Test
        void an_eye_already_there_is_enough() {
            Translated translated = translate(codes, Site.length(Site.concept("AL-R"), Site.concept(EYE_R), "mm"));
            assertThat(names(first(Observation.class, translated).getBodySite()))
                    .containsExactly(EYE_R);
            assertThat(translated.doubts()).isEmpty();
        }

        @Test
        void another_eye_beside_it_is_a_doubt_and_both_are_stated() {
            Translated translated = translate(codes, Site.length(Site.concept("AL-R"), Site.concept(EYE_L), "mm"));
            assertThat(names(first(Observation.class, translated).getBodySite()))
                    .containsExactly(EYE_L, EYE_R);
            assertThat(doubts(translated)).containsExactly(SITE_EYE_CONTRADICTED);
            assertThat(translated.doubts().get(0).particulars())
                    .containsExactly("https://site.example/codes|AL-R", "right", "left");
        }

        @Test
        void a_component_gives_its_eye_to_the_observation() {
            Observation panel = Site.length(Site.concept("BIO"), new CodeableConcept(), "mm");
            panel.addComponent().setCode(Site.concept("AL-R"));
            assertThat(names(first(Observation.class, translate(codes, panel)).getBodySite()))
                    .containsExactly(EYE_R);
        }

        @Test
        void so_do_a_diagnosis_an_operation_and_a_booking() {
            Condition condition = new Condition().setCode(Site.concept("DX-R"));
            condition.setId("c");
            Procedure procedure = new Procedure().setCode(Site.concept("DX-R"));
            procedure.setId("o");
            ServiceRequest booking = new ServiceRequest().setCode(Site.concept("DX-R"));
            booking.setId("b");
            Translated translated = translate(codes, condition, procedure, booking);
            assertThat(names(first(Condition.class, translated).getBodySiteFirstRep()))
                    .containsExactly(EYE_R);
            assertThat(names(first(Procedure.class, translated).getBodySiteFirstRep()))
                    .containsExactly(EYE_R);
            assertThat(names(first(ServiceRequest.class, translated).getBodySiteFirstRep()))
                    .containsExactly(EYE_R);
        }

        @Test
        void two_entries_that_disagree_only_about_the_eye_state_both() {
            SiteCodes both = Site.codes(
                    Site.code("AL", "measurement|axial-length", RIGHT),
                    Site.code("AL", "measurement|axial-length", LEFT));
            Translated translated = translate(both, Site.length(Site.concept("AL"), new CodeableConcept(), "mm"));
            assertThat(names(first(Observation.class, translated).getBodySite()))
                    .containsExactly(EYE_R, EYE_L);
            assertThat(doubts(translated)).containsExactly(SITE_CODE_AMBIGUOUS);
        }
    }

    @Nested
    class Given_a_body_site {

        @Test
        void the_eye_stands_beside_it_wherever_it_is() {
            Condition condition = new Condition().addBodySite(Site.concept("OS"));
            condition.setId("c");
            Translated translated = translate(Site.eyes(Site.eye("OS", LEFT)), condition);
            assertThat(names(first(Condition.class, translated).getBodySiteFirstRep()))
                    .containsExactly("https://site.example/codes|OS", EYE_L);
        }

        @Test
        void two_entries_state_both_eyes_and_are_a_doubt() {
            SiteCodes codes = Site.eyes(Site.eye("OX", LEFT), Site.eye("OX", RIGHT));
            Translated translated = translate(codes, Site.length(Site.concept(LENGTH_R), Site.concept("OX"), "mm"));
            assertThat(names(first(Observation.class, translated).getBodySite()))
                    .contains(EYE_R, EYE_L);
            assertThat(doubts(translated)).containsExactly(SITE_CODE_AMBIGUOUS);
        }

        @Test
        void a_code_beside_it_that_says_the_other_eye_is_a_doubt() {
            Translated translated = translate(
                    Site.eyes(Site.eye("OD", RIGHT)), Site.length(Site.concept("AL"), Site.concept("OD", EYE_L), "mm"));
            assertThat(doubts(translated)).containsExactly(SITE_EYE_CONTRADICTED);
            assertThat(translated.doubts().get(0).field()).isEqualTo("bodySite");
        }
    }

    @Nested
    class Given_a_unit {

        private Quantity read(MappedUnit mapped, String unit) {
            Observation length = Site.length(Site.concept(LENGTH_R), Site.concept(EYE_R), unit);
            return first(Observation.class, translate(Site.units(mapped), length))
                    .getValueQuantity();
        }

        @Test
        void another_word_leaves_the_number_as_it_is() {
            Quantity read = read(Site.unit(UnitKind.LENGTH, "Millim.", "mm", "1"), "Millim.");
            assertThat(read.getValue()).isEqualTo(new BigDecimal("23.50"));
            assertThat(read.getCode()).isEqualTo("mm");
            assertThat(read.getSystem()).isEqualTo("http://unitsofmeasure.org");
            assertThat(read.getUnit()).isEqualTo("Millim.");
        }

        @Test
        void a_declared_factor_is_applied_exactly() {
            Quantity read = read(Site.unit(UnitKind.LENGTH, "1/10 mm", "mm", "0.1"), "1/10 mm");
            assertThat(read.getValue()).isEqualByComparingTo("2.350");
        }

        @Test
        void of_another_kind_it_is_not_meant() {
            Quantity read = read(Site.unit(UnitKind.POWER, "X", "[diop]", "1"), "X");
            assertThat(read.hasCode()).isFalse();
        }

        @Test
        void two_readings_are_none() {
            Observation length = Site.length(Site.concept(LENGTH_R), Site.concept(EYE_R), "X");
            Translated translated = translate(
                    Site.units(Site.unit(UnitKind.LENGTH, "X", "mm", "1"), Site.unit(UnitKind.LENGTH, "X", "cm", "1")),
                    length);
            assertThat(first(Observation.class, translated).getValueQuantity().hasCode())
                    .isFalse();
            assertThat(doubts(translated)).containsExactly(SITE_CODE_AMBIGUOUS);
            assertThat(translated.doubts().get(0).particulars()).containsExactly("the unit 'X'", "mm or cm");
        }
    }

    @Nested
    class Given_a_patient {

        private final Patient patient = new Patient();
        private final SiteCodes codes = new SiteCodes(
                "site-1", List.of(), List.of(), List.of(), List.of("https://site.example/number"), List.of());

        @Test
        void only_what_counts_tells_one_from_another() {
            patient.setId("p1");
            patient.addIdentifier().setSystem("https://site.example/number").setValue("1");
            patient.addIdentifier().setSystem("https://site.example/visit").setValue("2");
            Translated translated = translate(codes, patient);
            assertThat(first(Patient.class, translated).getIdentifier()).hasSize(1);
            assertThat(patient.getIdentifier()).hasSize(2);
            assertThat(translated.doubts()).isEmpty();
        }

        @Test
        void with_nothing_that_counts_is_a_doubt() {
            patient.setId("p1");
            patient.addIdentifier().setValue("2");
            assertThat(doubts(translate(codes, patient))).containsExactly(PATIENT_IDENTIFIER_NOT_COUNTED);
        }
    }

    /** A parsed reference to a contained drug points at the drug itself, so it must point at the translated one. */
    @Test
    void a_drug_inside_its_statement_is_translated_too() {
        MedicationStatement statement = FHIR.newJsonParser().parseResource(MedicationStatement.class, """
                {"resourceType": "MedicationStatement", "id": "s", "status": "active",
                 "contained": [{"resourceType": "Medication", "id": "drug",
                                "code": {"coding": [{"system": "https://site.example/codes", "code": "RX"}]}}],
                 "medicationReference": {"reference": "#drug"}, "subject": {"reference": "Patient/p1"}}""");
        Translated translated = translate(Site.codes(Site.code("RX", "atc|G04CA02", null)), statement);
        Reference drug =
                (Reference) first(MedicationStatement.class, translated).getMedication();
        assertThat(names(((Medication) drug.getResource()).getCode()))
                .containsExactly("https://site.example/codes|RX", "http://www.whocc.no/atc|G04CA02");
    }
}
