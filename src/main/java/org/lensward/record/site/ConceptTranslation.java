package org.lensward.record.site;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Property;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.eye.Laterality;
import org.lensward.finding.FindingCode;
import org.lensward.record.Doubt;
import org.lensward.record.Vocabulary;

/** Puts standard codings beside local ones in every concept of one resource, wherever it stands. */
final class ConceptTranslation {

    private final SiteCodes codes;
    private final Resource resource;
    private final List<Doubt> doubts;

    ConceptTranslation(SiteCodes codes, Resource resource, List<Doubt> doubts) {
        this.codes = codes;
        this.resource = resource;
        this.doubts = doubts;
    }

    void translate() {
        walk(resource, "");
    }

    private void walk(Base element, String path) {
        for (Property property : element.children()) {
            List<Base> values = List.copyOf(property.getValues());
            for (int index = 0; index < values.size(); index++) {
                String name = property.getName().replace("[x]", "");
                String field = path + name + (property.isList() ? "[" + index + "]" : "");
                if (values.get(index) instanceof CodeableConcept concept) {
                    translate(concept, field);
                }
                walk(values.get(index), field + ".");
            }
        }
    }

    private void translate(CodeableConcept concept, String field) {
        for (Coding local : List.copyOf(concept.getCoding())) {
            Set<Meaning> meanings = codes.meanings(local);
            if (meanings.size() > 1) {
                ambiguous(local, meanings, field);
            } else {
                meanings.forEach(each -> add(concept, each.coding()));
                meanings.forEach(each -> contradicted(concept, local, each, field));
            }
            eye(concept, local, field);
        }
    }

    /** Two eyes for one body site are both put beside it: the rules of sides then refuse it. */
    private void eye(CodeableConcept concept, Coding local, String field) {
        Set<SiteEye> eyes = codes.eyes(local);
        if (eyes.size() > 1) {
            ambiguous(local, eyes, field);
        }
        Set<Laterality> beside = EnumSet.noneOf(Laterality.class);
        concept.getCoding().forEach(each -> beside.addAll(Vocabulary.eyes(each)));
        eyes.forEach(each -> beside.removeAll(each.eyes()));
        eyes.forEach(each -> add(concept, each.coding()));
        if (eyes.size() == 1 && !beside.isEmpty()) {
            SiteEye mapped = eyes.iterator().next();
            doubt(
                    FindingCode.SITE_EYE_CONTRADICTED,
                    field,
                    List.of(name(local), mapped.toString(), Vocabulary.words(beside)));
        }
    }

    private void contradicted(CodeableConcept concept, Coding local, Meaning mapped, String field) {
        CodeableConcept alone = new CodeableConcept(mapped.coding());
        Set<String> others = new TreeSet<>();
        if (!Vocabulary.measurements(alone).isEmpty()) {
            others.addAll(Vocabulary.measurements(concept));
        }
        if (!Vocabulary.methods(alone).isEmpty()) {
            others.addAll(Vocabulary.methods(concept));
        }
        others.remove(mapped.words());
        if (!others.isEmpty()) {
            doubt(
                    FindingCode.SITE_CODE_CONTRADICTED,
                    field,
                    List.of(name(local), mapped.words(), String.join(" and ", others)));
        }
    }

    private void ambiguous(Coding local, Set<?> meanings, String field) {
        String several = meanings.stream().map(Object::toString).collect(Collectors.joining(" or "));
        doubt(FindingCode.SITE_CODE_AMBIGUOUS, field, List.of(name(local), several));
    }

    private void doubt(FindingCode code, String field, List<String> particulars) {
        doubts.add(new Doubt(code, resource, field, particulars));
    }

    static String name(Coding coding) {
        return (coding.hasSystem() ? coding.getSystem() : "") + "|" + coding.getCode();
    }

    static void add(CodeableConcept concept, Coding standard) {
        boolean there = concept.getCoding().stream()
                .anyMatch(each -> standard.getSystem().equals(each.getSystem())
                        && standard.getCode().equals(each.getCode()));
        if (!there) {
            concept.addCoding(standard);
        }
    }
}
