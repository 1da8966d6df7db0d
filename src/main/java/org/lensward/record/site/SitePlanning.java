package org.lensward.record.site;

import ca.uhn.fhir.context.FhirContext;
import java.time.LocalDate;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.lens.Catalogue;
import org.lensward.plan.EyePlan;
import org.lensward.plan.Planner;
import org.lensward.plan.Policy;
import org.lensward.record.BookedCase;
import org.lensward.record.CaseReader;
import org.lensward.record.CatalogueReader;
import org.lensward.record.Evidences;
import org.lensward.record.Shelf;
import org.lensward.record.site.SiteTranslation.Translated;

/** The plans a hospital's record supports, its own codes understood. Whoever asks, the same record gives the same plan. */
public final class SitePlanning {

    private final Evidences evidences;
    private final CaseReader reader;
    private final Planner planner;
    private final SiteTranslation site;

    /**
     * For one hospital.
     *
     * @param fhir FHIR R4
     * @param policy the hospital's thresholds and preferences
     * @param codes the hospital's code map; a changed map changes every plan's fingerprint
     */
    public SitePlanning(FhirContext fhir, Policy policy, SiteCodes codes) {
        this.evidences = new Evidences(fhir);
        this.reader = new CaseReader(fhir, policy.biometry());
        this.planner = new Planner(
                policy, codes.isEmpty() ? policy.version() : policy.version() + ", site codes " + codes.version());
        this.site = new SiteTranslation(codes);
    }

    /**
     * One booking and its plan.
     *
     * @param booked the booking, as read
     * @param plan what to do for that eye
     */
    public record Planned(BookedCase booked, EyePlan plan) {}

    /** Plans every active booking in the bundle, as on that day. */
    public List<Planned> plan(Bundle gathered, LocalDate today) {
        Translated record = site.translate(gathered);
        return reader.readAll(new Shelf(record.bundle()), today, record.doubts()).stream()
                .map(booked -> new Planned(booked, planner.plan(booked.planning())))
                .toList();
    }

    /** The lens models there are to choose from. */
    public Catalogue catalogue(Bundle gathered) {
        return new CatalogueReader(evidences)
                .read(new Shelf(site.translate(gathered).bundle()));
    }
}
