package org.lensward.record.site;

import java.math.BigDecimal;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.jspecify.annotations.Nullable;
import org.lensward.finding.FindingCode;
import org.lensward.record.Doubt;
import org.lensward.record.UnitKind;
import org.lensward.record.site.SiteTranslation.Translated;

/** An invented hospital's codes, for tests. */
public final class Site {

    public static final String SYSTEM = "https://site.example/codes";
    public static final String SNOMED = "http://snomed.info/sct";

    private Site() {}

    public static MappedCode code(String code, String means, @Nullable SiteEye eye) {
        return new MappedCode(new LocalCode(SYSTEM, code), Meaning.parse(means), eye);
    }

    public static SiteCodes codes(MappedCode... codes) {
        return new SiteCodes("site-1", List.of(codes), List.of(), List.of(), List.of(), List.of());
    }

    public static SiteCodes eyes(MappedEye... eyes) {
        return new SiteCodes("site-1", List.of(), List.of(), List.of(eyes), List.of(), List.of());
    }

    public static SiteCodes units(MappedUnit... units) {
        return new SiteCodes("site-1", List.of(), List.of(units), List.of(), List.of(), List.of());
    }

    static MappedEye eye(String code, SiteEye eye) {
        return new MappedEye(new LocalCode(SYSTEM, code), eye);
    }

    static MappedUnit unit(UnitKind kind, String unit, String ucum, String factor) {
        return new MappedUnit(kind, unit, ucum, new BigDecimal(factor));
    }

    public static CodeableConcept concept(String... codes) {
        CodeableConcept concept = new CodeableConcept();
        for (String code : codes) {
            LocalCode named = LocalCode.parse(code.contains("|") ? code : SYSTEM + "|" + code);
            concept.addCoding(new Coding().setSystem(named.system()).setCode(named.code()));
        }
        return concept;
    }

    static Observation length(CodeableConcept code, CodeableConcept site, String unit) {
        Observation length = new Observation()
                .setStatus(ObservationStatus.FINAL)
                .setCode(code)
                .setSubject(new Reference("Patient/p1"))
                .setBodySite(site)
                .setEffective(new DateTimeType("2026-02-16"))
                .setValue(new Quantity().setValue(new BigDecimal("23.50")).setUnit(unit));
        length.setId("length");
        return length;
    }

    static Bundle bundle(Resource... resources) {
        Bundle bundle = new Bundle().setType(Bundle.BundleType.COLLECTION);
        for (Resource resource : resources) {
            bundle.addEntry().setResource(resource);
        }
        return bundle;
    }

    static Translated translate(SiteCodes codes, Resource... resources) {
        return new SiteTranslation(codes).translate(bundle(resources));
    }

    static <T extends Resource> T first(Class<T> type, Translated translated) {
        return Resources.of(translated.bundle())
                .filter(type::isInstance)
                .map(type::cast)
                .findFirst()
                .orElseThrow();
    }

    static List<String> names(CodeableConcept concept) {
        return concept.getCoding().stream().map(ConceptTranslation::name).toList();
    }

    static List<FindingCode> doubts(Translated translated) {
        return translated.doubts().stream().map(Doubt::code).toList();
    }
}
