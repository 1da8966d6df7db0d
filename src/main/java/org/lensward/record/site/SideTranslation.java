package org.lensward.record.site;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.eye.Laterality;
import org.lensward.finding.FindingCode;
import org.lensward.record.Doubt;
import org.lensward.record.Shelf;
import org.lensward.record.Vocabulary;

/** Puts the eye that a local code carries in itself where eyes are read: on the body site. */
final class SideTranslation {

    private final SiteCodes codes;
    private final Shelf shelf;
    private final List<Doubt> doubts;

    SideTranslation(SiteCodes codes, Shelf shelf, List<Doubt> doubts) {
        this.codes = codes;
        this.shelf = shelf;
        this.doubts = doubts;
    }

    void translate(Resource resource) {
        if (resource instanceof Observation observation) {
            List<CodeableConcept> named = new ArrayList<>(List.of(observation.getCode()));
            observation.getComponent().forEach(each -> named.add(each.getCode()));
            for (CodeableConcept code : named) {
                for (SiteEye eye : missing(resource, code, List.of(observation.getBodySite()))) {
                    ConceptTranslation.add(observation.getBodySite(), eye.coding());
                }
            }
        } else if (resource instanceof Condition condition) {
            missing(resource, condition.getCode(), condition.getBodySite())
                    .forEach(eye -> condition.addBodySite(new CodeableConcept(eye.coding())));
        } else if (resource instanceof Procedure procedure) {
            missing(resource, procedure.getCode(), procedure.getBodySite())
                    .forEach(eye -> procedure.addBodySite(new CodeableConcept(eye.coding())));
        } else if (resource instanceof ServiceRequest booking) {
            missing(resource, booking.getCode(), booking.getBodySite())
                    .forEach(eye -> booking.addBodySite(new CodeableConcept(eye.coding())));
        }
    }

    /** The eyes that the code carries and the sites do not yet name. A contradiction is stated whole, so that it is refused. */
    private List<SiteEye> missing(Resource resource, CodeableConcept code, List<CodeableConcept> sites) {
        Set<SiteEye> carried = codes.carried(code);
        if (carried.isEmpty()) {
            return List.of();
        }
        Set<Laterality> named = Vocabulary.eyes(shelf, code, sites);
        Set<Laterality> other = EnumSet.noneOf(Laterality.class);
        other.addAll(named);
        carried.forEach(eye -> other.removeAll(eye.eyes()));
        String words = carried.stream().map(SiteEye::toString).collect(Collectors.joining(" or "));
        if (carried.size() > 1) {
            doubt(FindingCode.SITE_CODE_AMBIGUOUS, resource, List.of(local(code), words));
        } else if (!other.isEmpty()) {
            doubt(FindingCode.SITE_EYE_CONTRADICTED, resource, List.of(local(code), words, Vocabulary.words(other)));
        }
        return carried.stream().filter(eye -> !named.containsAll(eye.eyes())).toList();
    }

    private String local(CodeableConcept code) {
        return code.getCoding().stream()
                .filter(each -> !codes.carried(new CodeableConcept(each.copy())).isEmpty())
                .map(ConceptTranslation::name)
                .collect(Collectors.joining(", "));
    }

    private void doubt(FindingCode code, Resource resource, List<String> particulars) {
        doubts.add(new Doubt(code, resource, "bodySite", particulars));
    }
}
