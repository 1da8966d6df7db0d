package org.lensward.record;

import ca.uhn.fhir.context.FhirContext;
import java.time.LocalDate;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.plan.EyePlan;
import org.lensward.plan.Planner;
import org.lensward.plan.Policy;
import org.lensward.record.site.SiteCodes;
import org.lensward.record.site.SiteTranslation;
import org.lensward.record.site.SiteTranslation.Translated;

/** From what was gathered about bookings to their plans, through the hospital's map of its own codes. */
public final class CasePlanning {

    private final CaseReader reader;
    private final Planner planner;
    private final SiteTranslation site;

    /**
     * By that policy.
     *
     * @param fhir FHIR R4
     * @param policy the hospital's thresholds and preferences
     * @param codes the hospital's code map; a changed map plans every booking again
     */
    public CasePlanning(FhirContext fhir, Policy policy, SiteCodes codes) {
        this.reader = new CaseReader(fhir, policy.biometry());
        this.planner = new Planner(
                policy, codes.isEmpty() ? policy.version() : policy.version() + ", site codes " + codes.version());
        this.site = new SiteTranslation(codes);
    }

    /**
     * A plan as it is made now.
     *
     * @param booked the booking
     * @param plan its plan
     */
    public record Made(BookedCase booked, EyePlan plan) {}

    /** Plans every active booking in the bundle. */
    public List<Made> plan(Bundle gathered, LocalDate today) {
        Translated record = site.translate(gathered);
        return reader.readAll(new Shelf(record.bundle()), today, record.doubts()).stream()
                .map(booked -> new Made(booked, planner.plan(booked.planning())))
                .toList();
    }
}
