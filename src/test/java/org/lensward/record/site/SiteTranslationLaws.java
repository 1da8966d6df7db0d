package org.lensward.record.site;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.parser.IParser;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.lensward.record.Fhir;
import org.lensward.record.UnitKind;
import org.lensward.record.site.SiteTranslation.Translated;

/** What holds for every map and every record, contradictory ones included. */
class SiteTranslationLaws {

    private static final IParser JSON = Fhir.r4().newJsonParser();
    private static final List<String> STANDARD = List.of(
            "http://loinc.org|64742-0",
            "http://loinc.org|66067-0",
            "http://snomed.info/sct|1290032005",
            "http://snomed.info/sct|1290031003",
            "http://snomed.info/sct|23986001",
            "http://dicom.nema.org/resources/ontology/DCM|111750");

    @Property(tries = 300)
    void translating_twice_is_translating_once(@ForAll("maps") SiteCodes map, @ForAll("records") Bundle record) {
        SiteTranslation translation = new SiteTranslation(map);
        Translated once = translation.translate(record);
        Translated twice = translation.translate(once.bundle());
        assertThat(text(twice.bundle())).isEqualTo(text(once.bundle()));
    }

    @Property(tries = 100)
    void the_same_record_gives_the_same_bytes_and_doubts(
            @ForAll("maps") SiteCodes map, @ForAll("records") Bundle record) {
        Translated one = new SiteTranslation(map).translate(record);
        Translated other = new SiteTranslation(map).translate(record.copy());
        assertThat(text(one.bundle())).isEqualTo(text(other.bundle()));
        assertThat(words(one)).isEqualTo(words(other));
    }

    @Property(tries = 100)
    void the_empty_map_changes_nothing(@ForAll("records") Bundle record) {
        Translated translated = new SiteTranslation(SiteCodes.none()).translate(record);
        assertThat(translated.bundle()).isSameAs(record);
        assertThat(translated.doubts()).isEmpty();
    }

    @Property(tries = 300)
    void no_coding_is_taken_away_or_moved_and_the_record_is_not_touched(
            @ForAll("maps") SiteCodes map, @ForAll("records") Bundle record) {
        String before = text(record);
        Bundle translated = new SiteTranslation(map).translate(record).bundle();
        assertThat(text(record)).isEqualTo(before);
        List<CodeableConcept> old = concepts(record).toList();
        List<CodeableConcept> read = concepts(translated).toList();
        for (int index = 0; index < old.size(); index++) {
            int codings = old.get(index).getCoding().size();
            assertThat(names(read.get(index)).subList(0, codings)).isEqualTo(names(old.get(index)));
        }
    }

    @Property(tries = 200)
    void ids_and_versions_are_the_records(@ForAll("maps") SiteCodes map, @ForAll("records") Bundle record) {
        Bundle translated = new SiteTranslation(map).translate(record).bundle();
        assertThat(Resources.of(translated)
                        .map(each -> each.getId() + each.getMeta().getVersionId()))
                .containsExactlyElementsOf(Resources.of(record)
                        .map(each -> each.getId() + each.getMeta().getVersionId())
                        .toList());
    }

    private static String text(Bundle bundle) {
        return JSON.encodeResourceToString(bundle);
    }

    private static List<String> words(Translated translated) {
        return translated.doubts().stream()
                .map(each -> each.code() + each.field() + each.particulars())
                .toList();
    }

    private static List<String> names(CodeableConcept concept) {
        return concept.getCoding().stream().map(ConceptTranslation::name).toList();
    }

    private static Stream<CodeableConcept> concepts(Bundle bundle) {
        return Resources.of(bundle).flatMap(each -> {
            if (each instanceof Observation observation) {
                return Stream.of(observation.getCode(), observation.getBodySite(), observation.getMethod());
            }
            return each instanceof Condition condition
                    ? Stream.concat(Stream.of(condition.getCode()), condition.getBodySite().stream())
                    : Stream.empty();
        });
    }

    @Provide
    Arbitrary<SiteCodes> maps() {
        Arbitrary<MappedCode> code = Combinators.combine(
                        Arbitraries.of("A", "B", "C"),
                        Arbitraries.of(
                                "measurement|axial-length",
                                "measurement|lens-thickness",
                                "sign|glaucoma",
                                "biometry-method|optical"),
                        Arbitraries.of(SiteEye.values()).injectNull(0.5))
                .as(Site::code);
        Arbitrary<MappedEye> eye = Combinators.combine(Arbitraries.of("A", "D", "E"), Arbitraries.of(SiteEye.values()))
                .as(Site::eye);
        Arbitrary<MappedUnit> unit = Combinators.combine(
                        Arbitraries.of("X", "Y"), Arbitraries.of("mm", "um", "cm"), Arbitraries.of("1", "0.1", "10"))
                .as((spelling, ucum, factor) -> Site.unit(UnitKind.LENGTH, spelling, ucum, factor));
        return Combinators.combine(
                        code.list().ofMaxSize(5),
                        unit.list().ofMaxSize(2),
                        eye.list().ofMaxSize(3),
                        Arbitraries.of("https://site.example/number", "https://site.example/other")
                                .list()
                                .ofMaxSize(1))
                .as((codes, units, eyes, numbers) -> new SiteCodes("site-1", codes, units, eyes, numbers, List.of()));
    }

    @Provide
    Arbitrary<Bundle> records() {
        Arbitrary<CodeableConcept> concept = Arbitraries.of(
                        Stream.concat(Stream.of("A", "B", "C", "D", "E", "F"), STANDARD.stream())
                                .toList())
                .list()
                .ofMaxSize(3)
                .map(codes -> Site.concept(codes.toArray(String[]::new)));
        return Combinators.combine(concept, concept, concept, Arbitraries.of("mm", "X", "Y", "D"))
                .as((code, site, method, unit) -> {
                    Observation length = Site.length(code, site, unit).setMethod(method);
                    length.getMeta().setVersionId("3");
                    Condition condition = new Condition().setCode(code.copy()).addBodySite(site.copy());
                    condition.setId("c");
                    Patient patient = new Patient();
                    patient.setId("p1");
                    patient.addIdentifier()
                            .setSystem("https://site.example/number")
                            .setValue("1");
                    return Site.bundle(length, condition, patient);
                });
    }
}
