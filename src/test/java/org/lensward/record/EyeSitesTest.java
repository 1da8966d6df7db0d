package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.eye.Laterality.LEFT;
import static org.lensward.eye.Laterality.RIGHT;
import static org.lensward.finding.FindingCode.BOOKING_FOR_BOTH_EYES;
import static org.lensward.finding.FindingCode.BOOKING_WITHOUT_EYE;
import static org.lensward.finding.FindingCode.MEASUREMENT_EYES_CONFLICT;
import static org.lensward.finding.FindingCode.MEASUREMENT_FOR_BOTH_EYES;
import static org.lensward.finding.FindingCode.MEASUREMENT_WITHOUT_EYE;

import org.hl7.fhir.r4.model.BodyStructure;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Reference;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.eye.Eye;
import org.lensward.eye.Laterality;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** Which eye: every way of saying it, and every way of failing to. Codes are SNOMED CT's and LOINC's. */
class EyeSitesTest {

    private static CodeableConcept site(String... codes) {
        CodeableConcept site = new CodeableConcept();
        for (String code : codes) {
            site.addCoding(new Coding().setSystem("http://snomed.info/sct").setCode(code));
        }
        return site;
    }

    private static Bundles bookedFor(CodeableConcept... sites) {
        return Bundles.ordinary().booking(booking -> {
            booking.getBodySite().clear();
            for (CodeableConcept site : sites) {
                booking.addBodySite(site);
            }
        });
    }

    private static CodeableConcept structure(String id) {
        CodeableConcept site = new CodeableConcept();
        site.addExtension("http://hl7.org/fhir/StructureDefinition/bodySite", new Reference("BodyStructure/" + id));
        return site;
    }

    @ParameterizedTest
    @CsvSource({
        "1290032005, RIGHT", "1290031003, LEFT",
        "1290043002, RIGHT", "1290041000, LEFT",
        "362502000, RIGHT", "362503005, LEFT",
        "18944008, RIGHT", "8966001, LEFT"
    })
    void a_code_of_one_eye(String code, Laterality eye) {
        assertThat(bookedFor(site(code)).planning().booking().eye()).contains(eye);
    }

    /** LOINC 66067-0 is the axial length of the left eye. */
    @Test
    void a_component_whose_code_names_the_other_eye_is_a_contradiction() {
        Bundles record = Bundles.ordinary().change(Observation.class, "length-right", length -> length.addComponent()
                .setCode(new CodeableConcept(
                        new Coding().setSystem("http://loinc.org").setCode("66067-0")))
                .setValue(Bundles.quantity("23.5", "mm")));
        assertThat(record.codes()).contains(FindingCode.MEASUREMENT_EYES_CONFLICT);
    }

    @ParameterizedTest
    @CsvSource({"24028007, RIGHT", "7771000, LEFT"})
    void an_eye_and_a_qualifier_beside_it(String qualifier, Laterality eye) {
        assertThat(bookedFor(site("81745001", qualifier)).planning().booking().eye())
                .contains(eye);
    }

    @ParameterizedTest
    @CsvSource({"24028007, RIGHT", "7771000, LEFT"})
    void an_eye_and_a_qualifier_in_an_extension(String qualifier, Laterality eye) {
        CodeableConcept site = site("81745001");
        site.getCodingFirstRep().addExtension("urn:qualifier", site(qualifier));
        assertThat(bookedFor(site).planning().booking().eye()).contains(eye);
        CodeableConcept other = site("81745001");
        other.addExtension("urn:qualifier", site(qualifier).getCodingFirstRep());
        assertThat(bookedFor(other).planning().booking().eye()).contains(eye);
    }

    @Test
    void a_body_structure_referred_to() {
        BodyStructure left = new BodyStructure()
                .setPatient(Bundles.PATIENT.copy())
                .setLocation(site("81745001"))
                .addLocationQualifier(site("7771000"));
        left.setId("eye");
        Bundles record = bookedFor(structure("eye")).add(left);
        assertThat(record.planning().booking().eye()).contains(LEFT);
        assertThat(record.plan().basis())
                .extracting(evidence -> evidence.resource())
                .contains("BodyStructure/eye");
    }

    /** LOINC 64742-0 and 66067-0: axial length of the right and the left eye. */
    @Test
    void a_loinc_code_that_carries_the_side() {
        Bundles record = Bundles.ordinary()
                .change(Observation.class, "length-right", each -> each.setBodySite(new CodeableConcept())
                        .setCode(Bundles.coded("http://loinc.org", "64742-0")))
                .change(Observation.class, "length-left", each -> each.setBodySite(new CodeableConcept())
                        .setCode(Bundles.coded("http://loinc.org", "66067-0")));
        assertThat(record.found()).isEmpty();
        assertThat(record.planning().eye().flatMap(Eye::biometry)).isPresent();
        assertThat(record.planning().fellow().flatMap(Eye::biometry)).isPresent();
    }

    @Nested
    class Given_a_booking {

        private void assertRefused(FindingCode code, CodeableConcept... sites) {
            Bundles record = bookedFor(sites);
            assertThat(record.planning().booking().eye()).isEmpty();
            assertThat(record.planning().eye()).isEmpty();
            assertThat(record.found()).hasSize(1);
            Finding finding = record.found().get(0);
            assertThat(finding.code()).isEqualTo(code);
            assertThat(finding.evidence()).extracting(Object::toString).containsExactly("ServiceRequest/b1.bodySite");
        }

        @Test
        void without_a_site_no_eye_is_assumed() {
            assertRefused(BOOKING_WITHOUT_EYE);
        }

        @Test
        void with_an_eye_of_no_side_no_eye_is_assumed() {
            assertRefused(BOOKING_WITHOUT_EYE, site("81745001"));
        }

        @Test
        void with_words_alone_no_eye_is_assumed() {
            assertRefused(BOOKING_WITHOUT_EYE, new CodeableConcept().setText("right eye"));
        }

        @Test
        void with_a_structure_that_is_not_there_no_eye_is_assumed() {
            assertRefused(BOOKING_WITHOUT_EYE, structure("none"));
        }

        @Test
        void with_the_codes_under_another_system_no_eye_is_assumed() {
            assertRefused(BOOKING_WITHOUT_EYE, Bundles.coded("urn:other", "1290032005"));
        }

        @ParameterizedTest
        @ValueSource(strings = {"51440002", "40638003"})
        void for_both_eyes_it_is_refused(String both) {
            assertRefused(BOOKING_FOR_BOTH_EYES, site(both));
        }

        @Test
        void naming_two_eyes_it_is_refused() {
            assertRefused(BOOKING_FOR_BOTH_EYES, site("1290032005"), site("1290031003"));
            assertRefused(BOOKING_FOR_BOTH_EYES, site("1290032005", "7771000"));
        }
    }

    @Nested
    class Given_a_measurement {

        private final Bundles record = Bundles.ordinary();

        private void assertRefused(FindingCode code, CodeableConcept site) {
            record.change(Observation.class, "length-right", each -> each.setBodySite(site));
            assertThat(record.codes()).containsExactly(code, FindingCode.AXIAL_LENGTH_MISSING);
            assertThat(record.found().get(0).evidence())
                    .extracting(Object::toString)
                    .containsExactly("Observation/length-right.bodySite");
            assertThat(record.planning().eye().flatMap(Eye::biometry)).isEmpty();
        }

        @Test
        void without_an_eye_it_is_no_eyes() {
            assertRefused(MEASUREMENT_WITHOUT_EYE, new CodeableConcept());
        }

        @Test
        void of_both_eyes_at_once_it_is_neithers() {
            assertRefused(MEASUREMENT_FOR_BOTH_EYES, site("40638003"));
        }

        @Test
        void naming_two_eyes_it_is_neithers() {
            assertRefused(MEASUREMENT_EYES_CONFLICT, site("1290032005", "7771000"));
        }

        @Test
        void of_the_other_eye_by_its_loinc_code_it_is_neithers() {
            record.change(Observation.class, "length-right", each -> each.getCode()
                    .addCoding(new Coding().setSystem("http://loinc.org").setCode("66067-0")));
            assertThat(record.codes()).contains(MEASUREMENT_EYES_CONFLICT);
        }

        @Test
        void of_the_fellow_eye_it_is_the_fellows() {
            record.change(Observation.class, "length-right", each -> each.setBodySite(site("1290031003")));
            assertThat(record.codes()).containsExactly(FindingCode.AXIAL_LENGTH_MISSING);
        }
    }

    @Test
    void a_panel_and_its_member_that_disagree_are_refused() {
        Bundles record = Bundles.ordinary(Shape.PANEL)
                .change(Observation.class, "length-right", each -> each.setBodySite(site("1290031003")));
        assertThat(record.codes()).contains(MEASUREMENT_EYES_CONFLICT);
    }

    @Test
    void right_and_left_are_read_alike() {
        Eye right = Bundles.ordinary().planning().eye().orElseThrow();
        Eye left = bookedFor(site("1290031003")).planning().fellow().orElseThrow();
        assertThat(left.side()).isEqualTo(RIGHT);
        assertThat(left).isEqualTo(right);
    }
}
