package org.lensward.record.check;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.check.Standing;
import org.lensward.finding.Evidence;
import org.lensward.record.PlanKey;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.site.SitePlanning;

/** What was gathered about one booking, asked about its lens check. */
final class GatheredCheck {

    private static final String FINGERPRINT = Systems.extension("plan-fingerprint");

    private static final Set<ProcedureStatus> NOT_BEGUN = Set.of(ProcedureStatus.PREPARATION, ProcedureStatus.NOTDONE);

    private final Bundle gathered;
    private final Shelf shelf;
    private final String booking;
    private final Optional<Procedure> plan;

    GatheredCheck(Bundle gathered, String booking) {
        this.gathered = gathered;
        this.shelf = new Shelf(gathered);
        this.booking = booking;
        this.plan = shelf.find(Procedure.class, PlanKey.of(booking).plan());
    }

    Shelf shelf() {
        return shelf;
    }

    Optional<Procedure> plan() {
        return plan;
    }

    ServiceRequest request() {
        return shelf.find(ServiceRequest.class, new Reference(booking))
                .orElseThrow(() -> new UnreadableRecord(
                        IssueType.NOTFOUND, booking, "The booking is not in what was read; read it with its plan."));
    }

    Optional<StoredCheck> check() {
        return stored().flatMap(hex -> StoredCheck.find(shelf, booking, hex));
    }

    boolean begun() {
        return plan.filter(each -> !NOT_BEGUN.contains(each.getStatus())).isPresent();
    }

    /** The plan as it would be made now; once the operation has begun, the plan it began with. */
    Standing standing(SitePlanning planning, LocalDate today) {
        Optional<String> fingerprint = begun()
                ? stored()
                : planning.plan(gathered, today).stream()
                        .filter(each -> Shelf.name(each.booked().request()).equals(booking))
                        .map(each -> each.plan().fingerprint().hex())
                        .findFirst();
        return new Standing(fingerprint.orElse(""), ListPlace.of(shelf, booking));
    }

    Evidence evidence() {
        ServiceRequest request = request();
        String version = request.getMeta().getVersionId();
        return new Evidence(booking, version == null ? "" : version, "");
    }

    private Optional<String> stored() {
        return plan.map(each -> each.getExtensionString(FINGERPRINT));
    }
}
