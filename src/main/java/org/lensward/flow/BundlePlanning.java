package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.plan.EyePlan;
import org.lensward.plan.Policy;
import org.lensward.record.BookedCase;
import org.lensward.record.CasePlanning;
import org.lensward.record.PlanTransaction;
import org.lensward.record.Publication;
import org.lensward.record.Shelf;
import org.lensward.record.site.SiteCodes;

/** From what was gathered about bookings to what is to be written about them: record, eye, plan, record. */
public final class BundlePlanning {

    private final CasePlanning cases;
    private final Clock clock;

    /** For a hospital whose codes are all understood as they come. */
    public BundlePlanning(FhirContext fhir, Policy policy, Clock clock) {
        this(fhir, policy, SiteCodes.none(), clock);
    }

    /**
     * For a hospital with codes of its own.
     *
     * @param fhir FHIR R4
     * @param policy the hospital's thresholds and preferences
     * @param codes the hospital's code map; a changed map plans every booking again
     * @param clock by which today is told
     */
    public BundlePlanning(FhirContext fhir, Policy policy, SiteCodes codes, Clock clock) {
        this.cases = new CasePlanning(fhir, policy, codes);
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
        Instant now = clock.instant();
        // What is written is compared with the record as it stands, never with its translation.
        PlanTransaction transaction = new PlanTransaction(new Shelf(gathered), now);
        return cases.plan(gathered, LocalDate.ofInstant(now, clock.getZone())).stream()
                .map(made -> new Planned(made.booked(), made.plan(), transaction.publish(made.booked(), made.plan())))
                .toList();
    }

    /** Takes back the plan of a booking that was withdrawn. */
    public Publication withdraw(Bundle gathered, ServiceRequest booking) {
        return new PlanTransaction(new Shelf(gathered), clock.instant()).withdraw(booking);
    }
}
