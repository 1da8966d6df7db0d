package org.lensward.record.site;

import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DomainResource;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.MedicationRequest;
import org.hl7.fhir.r4.model.MedicationStatement;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;
import org.lensward.finding.FindingCode;
import org.lensward.record.Doubt;
import org.lensward.record.Shelf;

/**
 * Reads a hospital's record as ours: a copy in which standard codings stand beside the local ones. Nothing coded is taken away, ids and
 * versions are those of the record, and what has been translated once is not changed by being translated again.
 */
public final class SiteTranslation {

    private final SiteCodes codes;

    public SiteTranslation(SiteCodes codes) {
        this.codes = codes;
    }

    /**
     * What came of it.
     *
     * @param bundle the record with standard codings in it; the very bundle given where the map is empty
     * @param doubts what the map leaves open or the record contradicts
     */
    public record Translated(Bundle bundle, List<Doubt> doubts) {
        public Translated {
            doubts = List.copyOf(doubts);
        }
    }

    /** Translates a copy; the bundle given is not touched. */
    public Translated translate(Bundle record) {
        if (codes.isEmpty()) {
            return new Translated(record, List.of());
        }
        Bundle copy = record.copy();
        Shelf shelf = new Shelf(copy);
        List<Doubt> doubts = new ArrayList<>();
        List<Resource> all = Resources.of(copy).toList();
        all.forEach(SiteTranslation::relink);
        all.forEach(each -> new ConceptTranslation(codes, each, doubts).translate());
        SideTranslation sides = new SideTranslation(codes, shelf, doubts);
        UnitTranslation units = new UnitTranslation(codes, doubts);
        for (Resource each : all) {
            sides.translate(each);
            units.translate(each);
            identifiers(each, doubts);
        }
        return new Translated(copy, doubts);
    }

    /** A patient is told from another by what the map counts: a visit's number must not void a lens check. */
    private void identifiers(Resource resource, List<Doubt> doubts) {
        if (resource instanceof Patient patient && !codes.identifiers().isEmpty()) {
            List<Identifier> counted = patient.getIdentifier().stream()
                    .filter(each -> each.hasSystem() && codes.counts(each.getSystem()))
                    .toList();
            patient.setIdentifier(new ArrayList<>(counted));
            if (counted.isEmpty()) {
                doubts.add(new Doubt(FindingCode.PATIENT_IDENTIFIER_NOT_COUNTED, patient, "identifier", List.of()));
            }
        }
    }

    /** A copied reference still points into the original. */
    private static void relink(Resource resource) {
        if (resource instanceof MedicationStatement statement) {
            relink(statement, statement.getMedication());
        } else if (resource instanceof MedicationRequest request) {
            relink(request, request.getMedication());
        }
    }

    private static void relink(DomainResource owner, @Nullable Type medication) {
        if (medication instanceof Reference reference && reference.hasReference()) {
            reference.setResource(owner.getContained().stream()
                    .filter(each ->
                            reference.getReference().equals("#" + each.getId().replace("#", "")))
                    .findFirst()
                    .orElse(null));
        }
    }
}
