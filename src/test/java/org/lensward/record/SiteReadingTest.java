package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.AXIAL_LENGTH_MISSING;
import static org.lensward.finding.FindingCode.BOOKING_FOR_BOTH_EYES;
import static org.lensward.finding.FindingCode.CODE_UNMAPPED;
import static org.lensward.finding.FindingCode.MEASUREMENT_EYES_CONFLICT;
import static org.lensward.finding.FindingCode.PATIENT_IDENTIFIER_NOT_COUNTED;
import static org.lensward.finding.FindingCode.SITE_CODE_AMBIGUOUS;
import static org.lensward.finding.FindingCode.SITE_CODE_CONTRADICTED;
import static org.lensward.finding.FindingCode.SITE_EYE_CONTRADICTED;
import static org.lensward.finding.FindingCode.UNIT_UNKNOWN;

import java.math.BigDecimal;
import java.util.List;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Medication;
import org.hl7.fhir.r4.model.MedicationStatement;
import org.hl7.fhir.r4.model.MedicationStatement.MedicationStatementStatus;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Biometry;
import org.lensward.eye.Eye;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.plan.PlanningCase;
import org.lensward.quantity.Millimetres;
import org.lensward.record.site.MappedUnit;
import org.lensward.record.site.Site;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SiteEye;

/** What becomes of a plan's reading through a hospital's code map. */
class SiteReadingTest {

    private static final SiteCodes LENGTHS = Site.codes(
            Site.code("AL", "measurement|axial-length", null),
            Site.code("AL-R", "measurement|axial-length", SiteEye.RIGHT),
            Site.code("OP-L", "snomed|415089008", SiteEye.LEFT));

    private final Bundles record = Bundles.ordinary();

    private static List<FindingCode> codes(PlanningCase read) {
        return read.found().stream().map(Finding::code).toList();
    }

    private void lengthCoded(String code) {
        record.change(Observation.class, "length-right", each -> each.setCode(Site.concept(code)));
    }

    @Test
    void a_local_code_is_read_and_its_evidence_names_the_records_version() {
        lengthCoded("AL");
        assertThat(record.codes()).contains(CODE_UNMAPPED, AXIAL_LENGTH_MISSING);
        PlanningCase read = record.through(LENGTHS);
        assertThat(read.found()).isEmpty();
        Biometry biometry = read.eye().flatMap(Eye::biometry).orElseThrow();
        assertThat(biometry.axialLength().value()).isEqualTo(Millimetres.of(23.50));
        assertThat(biometry.axialLength().evidence()).isEqualTo(new Evidence("Observation/length-right", "2", "value"));
    }

    @Test
    void an_eye_in_the_code_against_the_eye_at_the_site_withholds() {
        record.change(Observation.class, "length-right", each -> each.setCode(Site.concept("AL-R"))
                .setBodySite(Bundles.snomed("1290031003")));
        assertThat(codes(record.through(LENGTHS)))
                .contains(SITE_EYE_CONTRADICTED, MEASUREMENT_EYES_CONFLICT, AXIAL_LENGTH_MISSING);
    }

    @Test
    void a_booking_whose_code_says_the_other_eye_is_refused() {
        record.booking(each -> each.setCode(Site.concept("OP-L")));
        PlanningCase read = record.through(LENGTHS);
        assertThat(codes(read)).contains(SITE_EYE_CONTRADICTED, BOOKING_FOR_BOTH_EYES);
        assertThat(read.eye()).isEmpty();
    }

    @Test
    void a_code_of_two_meanings_is_neither_and_says_so() {
        lengthCoded("AL");
        PlanningCase read = record.through(Site.codes(
                Site.code("AL", "measurement|axial-length", null),
                Site.code("AL", "measurement|lens-thickness", null)));
        assertThat(codes(read)).contains(SITE_CODE_AMBIGUOUS, CODE_UNMAPPED, AXIAL_LENGTH_MISSING);
        assertThat(read.found().get(0).message())
                .isEqualTo("The site's code map gives https://site.example/codes|AL more than one meaning: axial length"
                        + " or lens thickness. None was taken.");
        assertThat(read.found().get(0).evidence())
                .extracting(Evidence::toString)
                .containsExactly("Observation/length-right.code");
    }

    @Test
    void a_meaning_that_the_code_beside_it_contradicts_withholds() {
        record.change(Observation.class, "length-right", each -> each.getCode()
                .getCoding()
                .addAll(Site.concept("D").getCoding()));
        PlanningCase read = record.through(Site.codes(Site.code("D", "measurement|lens-thickness", null)));
        assertThat(codes(read)).contains(SITE_CODE_CONTRADICTED);
        assertThat(Finding.withhold(read.found().stream())).isTrue();
    }

    /** As everything that is doubtful about the fellow eye. */
    @Test
    void a_doubt_about_the_fellow_eye_alone_is_not_this_plans() {
        record.change(Observation.class, "length-left", each -> each.getCode()
                .getCoding()
                .addAll(Site.concept("D").getCoding()));
        assertThat(record.through(Site.codes(Site.code("D", "measurement|lens-thickness", null)))
                        .found())
                .isEmpty();
    }

    @Test
    void a_doubt_about_another_patient_is_not_this_plans() {
        Observation other = new Observation();
        other.setId("other");
        other.setSubject(new Reference("Patient/p2")).setCode(Site.concept("AL-R"));
        other.setBodySite(Bundles.snomed("1290031003"));
        assertThat(record.add(other).through(LENGTHS).found()).isEmpty();
    }

    @Test
    void the_same_doubt_in_two_places_is_one_finding_with_both() {
        for (String id : List.of("one", "two")) {
            Condition condition =
                    new Condition().setSubject(Bundles.PATIENT.copy()).setCode(Site.concept("DX"));
            condition.addBodySite(Bundles.snomed("1290032005"));
            condition.setId(id);
            record.add(condition);
        }
        PlanningCase read = record.through(
                Site.codes(Site.code("DX", "sign|glaucoma", null), Site.code("DX", "sign|uveitis", null)));
        assertThat(read.found().stream().filter(each -> each.code() == SITE_CODE_AMBIGUOUS))
                .singleElement()
                .satisfies(each -> assertThat(each.evidence())
                        .extracting(Evidence::resource)
                        .containsExactly("Condition/one", "Condition/two"));
    }

    @Test
    void a_diagnosis_is_called_what_it_means() {
        Condition condition = new Condition().setSubject(Bundles.PATIENT.copy()).setCode(Site.concept("DX"));
        condition.addBodySite(Bundles.snomed("1290032005"));
        condition.setId("dx");
        PlanningCase read = record.add(condition).through(Site.codes(Site.code("DX", "snomed|23986001", null)));
        assertThat(read.eye().orElseThrow().history().affirmed(Sign.GLAUCOMA))
                .hasValueSatisfying(each -> assertThat(each.words()).isEqualTo("glaucoma"));
    }

    @Test
    void a_drug_inside_its_statement_is_read() {
        Medication drug = new Medication().setCode(Site.concept("RX"));
        drug.setId("drug");
        MedicationStatement statement = new MedicationStatement()
                .setStatus(MedicationStatementStatus.ACTIVE)
                .setMedication(new Reference("#drug"))
                .setSubject(Bundles.PATIENT.copy());
        statement.addContained(drug);
        statement.setId("taken");
        PlanningCase read = record.add(statement).through(Site.codes(Site.code("RX", "atc|G04CA02", null)));
        assertThat(read.found()).isEmpty();
        assertThat(read.eye().orElseThrow().history().affirmed(Sign.TAMSULOSIN)).isPresent();
    }

    @Test
    void a_local_unit_is_read_without_a_note_and_an_unmapped_one_is_refused() {
        record.change(
                Observation.class,
                "length-right",
                each -> each.setValue(
                        new Quantity().setValue(new BigDecimal("2.350")).setUnit("Zentim.")));
        assertThat(record.codes()).contains(UNIT_UNKNOWN);
        SiteCodes codes = Site.units(new MappedUnit(UnitKind.LENGTH, "Zentim.", "cm", BigDecimal.ONE));
        PlanningCase read = record.through(codes);
        assertThat(read.found()).isEmpty();
        assertThat(read.eye().flatMap(Eye::biometry).orElseThrow().axialLength().value())
                .isEqualTo(Millimetres.of(23.50));
    }

    @Test
    void a_patient_without_an_identifier_that_counts_is_a_condition() {
        SiteCodes codes = new SiteCodes(
                "site-1", List.of(), List.of(), List.of(), List.of("https://site.example/number"), List.of());
        assertThat(codes(record.through(codes))).containsExactly(PATIENT_IDENTIFIER_NOT_COUNTED);
    }
}
