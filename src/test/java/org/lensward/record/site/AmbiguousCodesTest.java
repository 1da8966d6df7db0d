package org.lensward.record.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.SITE_CODE_AMBIGUOUS;
import static org.lensward.finding.FindingCode.SITE_CODE_CONTRADICTED;
import static org.lensward.record.site.Site.doubts;
import static org.lensward.record.site.Site.first;
import static org.lensward.record.site.Site.translate;

import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Observation;
import org.junit.jupiter.api.Test;
import org.lensward.record.site.SiteTranslation.Translated;

/** A code of more than one meaning has none. Codes are SNOMED CT's, LOINC's and DICOM's as their publishers define them. */
class AmbiguousCodesTest {

    private static final String EYE_R = "http://snomed.info/sct|1290032005";
    private static final String LENGTH_R = "http://loinc.org|64742-0";

    @Test
    void none_is_taken() {
        SiteCodes codes = Site.codes(
                Site.code("DEPTH", "measurement|anterior-chamber-depth", null),
                Site.code("DEPTH", "measurement|lens-thickness", null));
        Translated translated = translate(codes, Site.length(Site.concept("DEPTH"), Site.concept(EYE_R), "mm"));
        assertThat(first(Observation.class, translated).getCode().getCoding()).hasSize(1);
        assertThat(doubts(translated)).containsExactly(SITE_CODE_AMBIGUOUS);
        assertThat(translated.doubts().get(0).particulars())
                .containsExactly("https://site.example/codes|DEPTH", "anterior chamber depth or lens thickness");
    }

    @Test
    void the_same_entry_twice_is_no_doubt() {
        SiteCodes codes = Site.codes(
                Site.code("AL", "measurement|axial-length", null), Site.code("AL", "measurement|axial-length", null));
        Translated translated = translate(codes, Site.length(Site.concept("AL"), Site.concept(EYE_R), "mm"));
        assertThat(first(Observation.class, translated).getCode().getCoding()).hasSize(2);
        assertThat(translated.doubts()).isEmpty();
    }

    @Test
    void a_code_beside_it_that_means_another_measurement_contradicts() {
        SiteCodes codes = Site.codes(Site.code("D", "measurement|anterior-chamber-depth", null));
        Translated translated = translate(codes, Site.length(Site.concept("D", LENGTH_R), Site.concept(EYE_R), "mm"));
        assertThat(doubts(translated)).containsExactly(SITE_CODE_CONTRADICTED);
        assertThat(translated.doubts().get(0).particulars())
                .containsExactly("https://site.example/codes|D", "anterior chamber depth", "axial length");
    }

    /** DICOM 111750: contact ultrasound. */
    @Test
    void so_does_another_biometry_method() {
        SiteCodes codes = Site.codes(Site.code("M", "biometry-method|optical", null));
        Observation length = Site.length(Site.concept(LENGTH_R), Site.concept(EYE_R), "mm");
        length.setMethod(Site.concept("M", "http://dicom.nema.org/resources/ontology/DCM|111750"));
        assertThat(doubts(translate(codes, length))).containsExactly(SITE_CODE_CONTRADICTED);
    }

    @Test
    void two_diagnoses_in_one_concept_are_both_true() {
        SiteCodes codes = Site.codes(Site.code("DX", "sign|glaucoma", null));
        Condition condition = new Condition().setCode(Site.concept("DX", "http://snomed.info/sct|4855003"));
        condition.setId("c");
        assertThat(translate(codes, condition).doubts()).isEmpty();
    }
}
