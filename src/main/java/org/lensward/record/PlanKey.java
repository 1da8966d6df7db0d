package org.lensward.record;

import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.plan.Fingerprint;

/**
 * The name under which everything of one booking's plan is stored. It follows from the booking alone, so that planning again overwrites
 * and never doubles.
 *
 * @param value the booking's id, or a digest of it where the id is too long or no plain id
 */
public record PlanKey(String value) {

    private static final int LONGEST = 24;

    /** Of a booking. */
    public static PlanKey of(ServiceRequest booking) {
        return of(Shelf.name(booking));
    }

    /** Of a booking's name, such as {@code ServiceRequest/b1}. */
    public static PlanKey of(String booking) {
        String id = booking.substring(booking.indexOf('/') + 1);
        boolean plain = id.length() <= LONGEST && id.matches("[A-Za-z0-9\\-.]+");
        return new PlanKey(plain ? id : Evidences.digest(booking));
    }

    /** The identifier on every resource of the plan. */
    public Identifier identifier() {
        return new Identifier().setSystem(Systems.PLAN_IDENTIFIER).setValue(value);
    }

    /** The search value of that identifier. */
    public String token() {
        return Systems.PLAN_IDENTIFIER + "|" + value;
    }

    /** The id of a part of the plan, such as its primary lens. */
    public String id(String part) {
        return "plan-" + value + "-" + part;
    }

    /** The plan's own id. */
    public String planId() {
        return "plan-" + value;
    }

    /** A reference to the plan. */
    public Reference plan() {
        return new Reference("Procedure/" + planId());
    }

    String versionedId(String part, Fingerprint fingerprint) {
        return id(part + "-" + fingerprint.brief());
    }
}
