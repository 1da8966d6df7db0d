package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.CODE_UNMAPPED;
import static org.lensward.finding.FindingCode.DRUG_NOT_UNDERSTOOD;
import static org.lensward.finding.FindingCode.SIDE_NOT_STATED;

import java.time.LocalDate;
import java.util.Optional;
import org.hl7.fhir.r4.model.AllergyIntolerance;
import org.hl7.fhir.r4.model.AllergyIntolerance.AllergyIntoleranceCriticality;
import org.hl7.fhir.r4.model.AllergyIntolerance.AllergyIntoleranceSeverity;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.FamilyMemberHistory;
import org.hl7.fhir.r4.model.Medication;
import org.hl7.fhir.r4.model.MedicationRequest;
import org.hl7.fhir.r4.model.MedicationRequest.MedicationRequestStatus;
import org.hl7.fhir.r4.model.MedicationStatement;
import org.hl7.fhir.r4.model.MedicationStatement.MedicationStatementStatus;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Reference;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.eye.Allergen;
import org.lensward.eye.Allergy;
import org.lensward.eye.EyeSurgery;
import org.lensward.eye.History;
import org.lensward.eye.Sign;

/** Diagnoses, operations, drugs and remarks; codes are SNOMED CT's and the ATC's. The right eye is booked. */
class HistoryReaderTest {

    private static final String RIGHT = "1290032005";
    private static final String LEFT = "1290031003";
    private static final String ATC = "http://www.whocc.no/atc";

    private final Bundles record = Bundles.ordinary();

    private History right() {
        return record.planning().eye().orElseThrow().history();
    }

    private History left() {
        return record.planning().fellow().orElseThrow().history();
    }

    private Condition condition(String code, String... sides) {
        Condition condition = new Condition().setSubject(Bundles.PATIENT.copy()).setCode(Bundles.snomed(code));
        for (String side : sides) {
            condition.addBodySite(Bundles.snomed(side));
        }
        condition.setId("c1");
        record.add(condition);
        return condition;
    }

    @Nested
    class Given_a_diagnosis {

        @ParameterizedTest
        @CsvSource({
            "23986001, GLAUCOMA",
            "111514006, GLAUCOMA",
            "111514006, PSEUDOEXFOLIATION",
            "4855003, DIABETIC_RETINOPATHY",
            "849000, BROWN_OR_WHITE_LENS",
            "267626000, BROWN_OR_WHITE_LENS",
            "264443002, BROWN_OR_WHITE_LENS",
            "95724003, SWOLLEN_LENS",
            "253225009, POSTERIOR_POLAR_CATARACT",
            "34361001, EYE_INJURY",
            "193839007, CORNEA_GUTTATA",
            "32022003, HIGH_MYOPIA",
            "128473001, UVEITIS",
            "367649002, EPIRETINAL_MEMBRANE",
            "267718000, MACULOPATHY",
            "28835009, RETINITIS_PIGMENTOSA",
            "24010005, APHAKIA",
            "95217000, PSEUDOPHAKIA",
            "247095003, SILICONE_OIL",
            "232077005, VITRECTOMY"
        })
        void of_this_eye_it_is_its_sign(String code, Sign sign) {
            condition(code, RIGHT);
            assertThat(right().affirmed(sign)).isPresent();
            assertThat(left().unknown(sign)).isTrue();
            assertThat(record.found()).isEmpty();
        }

        @Test
        void in_our_own_code_it_is_its_sign() {
            condition("0", RIGHT).setCode(Bundles.ours("sign", "lens-dislocation"));
            assertThat(right().affirmed(Sign.LENS_DISLOCATION)).isPresent();
        }

        @Test
        void of_the_other_eye_it_is_none_of_this_one() {
            condition("23986001", LEFT);
            assertThat(right().unknown(Sign.GLAUCOMA)).isTrue();
            assertThat(left().affirmed(Sign.GLAUCOMA)).isPresent();
            assertThat(record.found()).isEmpty();
        }

        @Test
        void of_both_eyes_it_is_a_sign_of_each() {
            condition("23986001", RIGHT, LEFT);
            assertThat(right().affirmed(Sign.GLAUCOMA)).isPresent();
            assertThat(left().affirmed(Sign.GLAUCOMA)).isPresent();
        }

        @Test
        void without_a_side_it_is_taken_for_this_eye_with_a_caution() {
            condition("23986001");
            assertThat(right().affirmed(Sign.GLAUCOMA)).isPresent();
            assertThat(record.codes()).containsExactly(SIDE_NOT_STATED);
        }

        @ParameterizedTest
        @ValueSource(strings = {"resolved", "inactive", "remission"})
        void that_is_over_it_is_not_said(String status) {
            condition("23986001", RIGHT).setClinicalStatus(Bundles.coded("clinical", status));
            assertThat(right().unknown(Sign.GLAUCOMA)).isTrue();
        }

        @ParameterizedTest
        @ValueSource(strings = {"active", "recurrence", "relapse"})
        void that_goes_on_it_is_said(String status) {
            condition("23986001", RIGHT).setClinicalStatus(Bundles.coded("clinical", status));
            assertThat(right().affirmed(Sign.GLAUCOMA)).isPresent();
        }

        @Test
        void entered_in_error_it_is_not_said() {
            condition("23986001", RIGHT).setVerificationStatus(Bundles.coded("verification", "entered-in-error"));
            assertThat(right().unknown(Sign.GLAUCOMA)).isTrue();
        }

        @Test
        void refuted_it_is_denied() {
            condition("23986001", RIGHT).setVerificationStatus(Bundles.coded("verification", "refuted"));
            assertThat(right().denied(Sign.GLAUCOMA)).isTrue();
        }

        @Test
        void refuted_of_no_side_it_frees_neither_eye() {
            condition("23986001").setVerificationStatus(Bundles.coded("verification", "refuted"));
            assertThat(right().unknown(Sign.GLAUCOMA)).isTrue();
            assertThat(record.found()).isEmpty();
        }

        @Test
        void not_understood_it_is_noted_if_it_is_this_eyes() {
            condition("75258004", RIGHT);
            assertThat(record.codes()).containsExactly(CODE_UNMAPPED);
        }

        @Test
        void not_understood_it_is_not_noted_if_it_is_the_other_eyes() {
            condition("75258004", LEFT);
            assertThat(record.found()).isEmpty();
        }

        @Test
        void of_another_patient_it_is_nobodys_here() {
            condition("23986001", RIGHT).setSubject(new Reference("Patient/p2"));
            assertThat(right().unknown(Sign.GLAUCOMA)).isTrue();
        }
    }

    @Nested
    class Given_an_operation {

        private Procedure procedure(String code, String side, String day) {
            Procedure procedure = new Procedure()
                    .setStatus(ProcedureStatus.COMPLETED)
                    .setSubject(Bundles.PATIENT.copy())
                    .setCode(Bundles.snomed(code))
                    .setPerformed(day.isEmpty() ? null : new DateTimeType(day));
            procedure.addBodySite(Bundles.snomed(side));
            procedure.setId("o1");
            record.add(procedure);
            return procedure;
        }

        @ParameterizedTest
        @CsvSource({
            "51683002, CORNEA_INCISED",
            "312965008, CORNEA_RESHAPED",
            "414582004, CORNEA_RESHAPED",
            "397516006, CORNEA_RESHAPED",
            "415089008, PSEUDOPHAKIA",
            "54885007, APHAKIA"
        })
        void of_this_eye_it_is_a_sign_and_surgery_of_it(String code, Sign sign) {
            procedure(code, RIGHT, "2019-05-01");
            assertThat(right().affirmed(sign)).isPresent();
            assertThat(record.planning().eye().orElseThrow().surgery())
                    .extracting(EyeSurgery::performedOn)
                    .containsExactly(Optional.of(LocalDate.of(2019, 5, 1)));
        }

        @Test
        void of_an_unknown_kind_it_still_is_surgery_of_this_eye() {
            procedure("13767004", RIGHT, "");
            assertThat(record.planning().eye().orElseThrow().surgery())
                    .extracting(EyeSurgery::performedOn)
                    .containsExactly(Optional.empty());
        }

        @Test
        void of_the_other_eye_it_is_none_of_this_one() {
            procedure("415089008", LEFT, "2019-05-01");
            assertThat(record.planning().eye().orElseThrow().surgery()).isEmpty();
            assertThat(right().unknown(Sign.PSEUDOPHAKIA)).isTrue();
        }

        @ParameterizedTest
        @EnumSource(
                value = ProcedureStatus.class,
                names = {"PREPARATION", "NOTDONE", "ENTEREDINERROR"})
        void that_was_not_done_it_is_not_said(ProcedureStatus status) {
            procedure("415089008", RIGHT, "2019-05-01").setStatus(status);
            assertThat(right().unknown(Sign.PSEUDOPHAKIA)).isTrue();
            assertThat(record.planning().eye().orElseThrow().surgery()).isEmpty();
        }
    }

    @Nested
    class Given_an_examiners_remark {

        private void remark(boolean present, String side) {
            Observation remark = Shape.observation("r1", "none").setValue(new BooleanType(present));
            remark.setCode(Bundles.ours("sign", "phacodonesis"));
            remark.setBodySite(side.isEmpty() ? new CodeableConcept() : Bundles.snomed(side));
            record.add(remark);
        }

        @Test
        void it_affirms_or_denies() {
            remark(true, RIGHT);
            assertThat(right().affirmed(Sign.PHACODONESIS)).isPresent();
            remark(false, RIGHT);
            assertThat(right().denied(Sign.PHACODONESIS)).isTrue();
        }

        @Test
        void denied_of_no_side_it_frees_neither_eye() {
            remark(false, "");
            assertThat(right().unknown(Sign.PHACODONESIS)).isTrue();
        }
    }

    @Nested
    class Given_a_drug {

        private void taken(MedicationStatementStatus status, String code) {
            MedicationStatement taken = new MedicationStatement()
                    .setStatus(status)
                    .setSubject(Bundles.PATIENT.copy())
                    .setMedication(Bundles.coded(ATC, code));
            taken.setId("m1");
            record.add(taken);
        }

        private MedicationRequest prescribed(MedicationRequestStatus status) {
            MedicationRequest prescribed = new MedicationRequest()
                    .setStatus(status)
                    .setSubject(Bundles.PATIENT.copy())
                    .setMedication(Bundles.coded(ATC, "G04CA02"));
            prescribed.setId("m2");
            record.add(prescribed);
            return prescribed;
        }

        @ParameterizedTest
        @CsvSource({
            "C02CA04, DOXAZOSIN",
            "G04CA02, TAMSULOSIN",
            "G04CA52, TAMSULOSIN",
            "G04CA01, ALFUZOSIN",
            "G04CA03, TERAZOSIN",
            "G04CA04, OTHER_ALPHA_BLOCKER",
            "B01AA03, WARFARIN",
            "B01AE07, DIRECT_ANTICOAGULANT",
            "B01AF01, DIRECT_ANTICOAGULANT",
            "B01AC06, ANTIPLATELET_DRUG",
            "A10BA02, DIABETES"
        })
        void it_is_a_sign_of_the_person_and_needs_no_side(String code, Sign sign) {
            taken(MedicationStatementStatus.ACTIVE, code);
            assertThat(right().affirmed(sign)).isPresent();
            assertThat(left().affirmed(sign)).isPresent();
            assertThat(record.found()).isEmpty();
        }

        @ParameterizedTest
        @EnumSource(
                value = MedicationStatementStatus.class,
                names = {"COMPLETED", "STOPPED", "ONHOLD", "UNKNOWN"})
        void once_taken_it_counts_for_ever(MedicationStatementStatus status) {
            taken(status, "G04CA02");
            assertThat(right().affirmed(Sign.TAMSULOSIN)).isPresent();
        }

        /** A stopped tablet thins nothing; the iris stays slack. */
        @ParameterizedTest
        @CsvSource({"STOPPED, false", "COMPLETED, false", "ACTIVE, true", "ONHOLD, true", "UNKNOWN, true"})
        void that_thins_the_blood_counts_while_it_is_taken(MedicationStatementStatus status, boolean counts) {
            taken(status, "B01AA03");
            assertThat(right().affirmed(Sign.WARFARIN).isPresent()).isEqualTo(counts);
            assertThat(right().denied(Sign.WARFARIN)).isFalse();
        }

        @Test
        void with_a_code_of_the_atc_that_means_nothing_to_the_eye_is_understood() {
            taken(MedicationStatementStatus.ACTIVE, "C07AB02");
            assertThat(record.found()).isEmpty();
        }

        @Test
        void whose_code_is_not_understood_is_looked_at_by_hand() {
            prescribed(MedicationRequestStatus.ACTIVE)
                    .setMedication(new CodeableConcept().setText("something for the prostate"));
            assertThat(record.codes()).containsExactly(DRUG_NOT_UNDERSTOOD);
            assertThat(record.found().get(0).message()).contains("'something for the prostate'");
            assertThat(record.found().get(0).evidence().get(0)).hasToString("MedicationRequest/m2.medication");
        }

        @Test
        void that_was_not_taken_need_not_be_understood() {
            taken(MedicationStatementStatus.NOTTAKEN, "");
            assertThat(record.found()).isEmpty();
        }

        @Test
        void that_is_forbidden_is_not_prescribed() {
            prescribed(MedicationRequestStatus.ACTIVE).setDoNotPerform(true);
            assertThat(right().unknown(Sign.TAMSULOSIN)).isTrue();
        }

        @Test
        void never_taken_it_is_denied() {
            taken(MedicationStatementStatus.NOTTAKEN, "G04CA02");
            assertThat(right().denied(Sign.TAMSULOSIN)).isTrue();
        }

        @Test
        void entered_in_error_it_is_not_said() {
            taken(MedicationStatementStatus.ENTEREDINERROR, "G04CA02");
            assertThat(right().unknown(Sign.TAMSULOSIN)).isTrue();
        }

        @ParameterizedTest
        @EnumSource(
                value = MedicationRequestStatus.class,
                names = {"ACTIVE", "COMPLETED", "STOPPED"})
        void once_prescribed_it_counts(MedicationRequestStatus status) {
            prescribed(status);
            assertThat(right().affirmed(Sign.TAMSULOSIN)).isPresent();
        }

        @ParameterizedTest
        @EnumSource(
                value = MedicationRequestStatus.class,
                names = {"DRAFT", "CANCELLED", "ENTEREDINERROR"})
        void never_handed_out_it_does_not_count(MedicationRequestStatus status) {
            prescribed(status);
            assertThat(right().unknown(Sign.TAMSULOSIN)).isTrue();
        }

        @Test
        void named_by_reference_it_counts() {
            Medication drug = new Medication().setCode(Bundles.coded(ATC, "G04CA02"));
            drug.setId("d1");
            record.add(drug);
            prescribed(MedicationRequestStatus.ACTIVE).setMedication(new Reference("Medication/d1"));
            assertThat(right().affirmed(Sign.TAMSULOSIN)).isPresent();
        }

        @Test
        void contained_in_the_prescription_it_counts() {
            Medication drug = new Medication().setCode(Bundles.coded(ATC, "G04CA02"));
            drug.setId("d1");
            MedicationRequest request = prescribed(MedicationRequestStatus.ACTIVE);
            request.addContained(drug);
            request.setMedication(new Reference("#d1"));
            assertThat(right().affirmed(Sign.TAMSULOSIN)).isPresent();
        }
    }

    @Nested
    class Given_allergies {

        private void allergy(String id, String words, String verification) {
            AllergyIntolerance allergy = new AllergyIntolerance()
                    .setPatient(Bundles.PATIENT.copy())
                    .setCode(new CodeableConcept().setText(words));
            if (!verification.isEmpty()) {
                allergy.setVerificationStatus(Bundles.coded("verification", verification));
            }
            allergy.setId(id);
            record.add(allergy);
        }

        @Test
        void every_one_that_was_not_refuted_is_read_in_its_own_words() {
            allergy("a1", "iodine", "confirmed");
            allergy("a2", "latex", "");
            allergy("a3", "peanuts", "refuted");
            allergy("a4", "dust", "entered-in-error");
            assertThat(record.planning().person().allergies())
                    .extracting(Allergy::words)
                    .containsExactly("iodine", "latex");
        }

        private AllergyIntolerance coded(CodeableConcept code) {
            AllergyIntolerance allergy =
                    new AllergyIntolerance().setPatient(Bundles.PATIENT.copy()).setCode(code);
            allergy.setId("a1");
            record.add(allergy);
            return allergy;
        }

        private Allergy only() {
            return record.planning().person().allergies().get(0);
        }

        @ParameterizedTest
        @CsvSource({
            "http://snomed.info/sct, 91936005, PENICILLIN",
            "http://snomed.info/sct, 764146007, PENICILLIN",
            "http://snomed.info/sct, 373270004, PENICILLIN",
            "http://snomed.info/sct, 111088007, LATEX",
            "http://snomed.info/sct, 294532003, CEPHALOSPORIN",
            "http://snomed.info/sct, 1003755004, LATEX",
            "http://snomed.info/sct, 91939003, SULPHONAMIDE",
            "http://www.whocc.no/atc, J01DC02, CEPHALOSPORIN",
            "http://www.whocc.no/atc, D08AG02, IODINE",
            "http://www.whocc.no/atc, N01BB02, AMIDE_ANAESTHETIC",
            "https://lensward.org/fhir/CodeSystem/allergen, trypan-blue, TRYPAN_BLUE"
        })
        void its_substance_is_known_by_its_code(String system, String code, Allergen substance) {
            coded(Bundles.coded(system, code));
            assertThat(only().to()).containsExactly(substance);
            assertThat(record.planning().person().allergicTo(substance)).isPresent();
        }

        @Test
        void the_substance_of_a_reaction_counts_too() {
            coded(new CodeableConcept().setText("a tablet")).addReaction().setSubstance(Bundles.coded(ATC, "J01CA04"));
            assertThat(only().to()).containsExactly(Allergen.PENICILLIN);
        }

        @Test
        void what_is_not_understood_forbids_nothing_by_name_and_stays_named() {
            coded(new CodeableConcept().setText("the red ointment"));
            assertThat(only().to()).isEmpty();
            assertThat(only().words()).isEqualTo("the red ointment");
        }

        @Test
        void no_known_allergy_is_none() {
            coded(Bundles.snomed("716186003"));
            assertThat(record.planning().person().allergies()).isEmpty();
            assertThat(record.planning().person().noAllergy().orElseThrow()).hasToString("AllergyIntolerance/a1.code");
            assertThat(Bundles.ordinary().planning().person().noAllergy()).isEmpty();
        }

        @ParameterizedTest
        @ValueSource(strings = {"inactive", "resolved"})
        void one_that_is_over_is_not_said(String status) {
            coded(Bundles.snomed("91936005")).setClinicalStatus(Bundles.coded("clinical", status));
            assertThat(record.planning().person().allergies()).isEmpty();
        }

        @Test
        void of_high_criticality_it_is_severe() {
            coded(Bundles.snomed("91936005")).setCriticality(AllergyIntoleranceCriticality.HIGH);
            assertThat(only().severe()).isTrue();
        }

        @Test
        void with_a_severe_reaction_or_anaphylaxis_it_is_severe() {
            AllergyIntolerance allergy = coded(Bundles.snomed("91936005"));
            allergy.addReaction()
                    .setSeverity(AllergyIntoleranceSeverity.MILD)
                    .addManifestation(Bundles.snomed("247472004"));
            assertThat(only().severe()).isFalse();
            allergy.addReaction().addManifestation(Bundles.snomed("39579001"));
            assertThat(only().severe()).isTrue();
            allergy.getReaction().clear();
            allergy.addReaction().setSeverity(AllergyIntoleranceSeverity.SEVERE);
            assertThat(only().severe()).isTrue();
        }
    }

    /** A relative's disease is in a resource of its own kind, which nobody reads as the patient's. */
    @Test
    void a_family_history_is_not_the_patients() {
        FamilyMemberHistory mother = new FamilyMemberHistory().setPatient(Bundles.PATIENT.copy());
        mother.addCondition().setCode(Bundles.snomed("23986001"));
        mother.setId("f1");
        record.add(mother);
        // 160352001: family history of glaucoma, a situation of its own (value from memory)
        condition("160352001", RIGHT);
        assertThat(right().unknown(Sign.GLAUCOMA)).isTrue();
    }

    @Nested
    class Given_a_disease_of_the_person {

        @ParameterizedTest
        @CsvSource({
            "73211009, DIABETES",
            "44054006, DIABETES",
            "46635009, DIABETES",
            "19346006, MARFAN_SYNDROME",
            "195967001, ASTHMA",
            "84114007, HEART_FAILURE",
            "709044004, KIDNEY_DISEASE"
        })
        void it_needs_no_side(String code, Sign sign) {
            condition(code);
            assertThat(right().affirmed(sign)).isPresent();
            assertThat(left().affirmed(sign)).isPresent();
            assertThat(record.found()).isEmpty();
        }
    }
}
