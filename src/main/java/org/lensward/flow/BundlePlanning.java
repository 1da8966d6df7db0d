package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.plan.EyePlan;
import org.lensward.plan.Planner;
import org.lensward.plan.Policy;
import org.lensward.record.BookedCase;
import org.lensward.record.CaseReader;
import org.lensward.record.PlanTransaction;
import org.lensward.record.Publication;
import org.lensward.record.Shelf;

/** From what was gathered about bookings to what is to be written about them: record, eye, plan, record. */
public final class BundlePlanning {

    private final CaseReader reader;
    private final Planner planner;
    private final Clock clock;

    public BundlePlanning(FhirContext fhir, Policy policy, Clock clock) {
        this.reader = new CaseReader(fhir, policy.biometry());
        this.planner = new Planner(policy);
        this.clock = clock;
    }

    /**
     * One booking's plan and what to do about it in the record.
     *
     * @param booked the booking
     * @param plan its plan
     * @param publication what to write
     */
    public record Planned(BookedCase booked, EyePlan plan, Publication publication) {}

    /** Plans every active booking in the bundle. */
    public List<Planned> plan(Bundle gathered) {
        Shelf shelf = new Shelf(gathered);
        Instant now = clock.instant();
        LocalDate today = LocalDate.ofInstant(now, clock.getZone());
        PlanTransaction transaction = new PlanTransaction(shelf, now);
        List<Planned> planned = new ArrayList<>();
        for (BookedCase booked : reader.readAll(shelf, today)) {
            EyePlan plan = planner.plan(booked.planning());
            planned.add(new Planned(booked, plan, transaction.publish(booked, plan)));
        }
        return planned;
    }

    /** Takes back the plan of a booking that was withdrawn. */
    public Publication withdraw(Bundle gathered, ServiceRequest booking) {
        return new PlanTransaction(new Shelf(gathered), clock.instant()).withdraw(booking);
    }
}
