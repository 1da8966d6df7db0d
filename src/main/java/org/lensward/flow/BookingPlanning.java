package org.lensward.flow;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.apache.camel.Header;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.lensward.finding.Finding;
import org.lensward.flow.BundlePlanning.Planned;
import org.lensward.record.Publication;
import org.lensward.record.UnreadableRecord;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The step from one booking's gathered resources to what the record must be told. Logs codes and ids, never a patient. */
public final class BookingPlanning {

    private static final Logger LOG = LoggerFactory.getLogger(BookingPlanning.class);

    private static final Set<ServiceRequestStatus> WITHDRAWN =
            Set.of(ServiceRequestStatus.REVOKED, ServiceRequestStatus.ENTEREDINERROR);

    private final BundlePlanning planning;

    public BookingPlanning(BundlePlanning planning) {
        this.planning = planning;
    }

    /**
     * What to do about the booking.
     *
     * @param gathered everything that concerns it
     * @param name booking and patient, as the queue carries them; only the booking is logged
     */
    public Publication plan(Bundle gathered, @Header("booking") String name) {
        String booking = BookingName.parse(name).booking();
        ServiceRequest request = request(gathered, booking);
        if (WITHDRAWN.contains(request.getStatus())) {
            LOG.info("{} withdrawn", booking);
            return planning.withdraw(gathered, request);
        }
        List<Planned> planned = planning.plan(gathered);
        planned.forEach(each -> log(booking, each));
        return planned.stream()
                .map(Planned::publication)
                .findFirst()
                .orElseGet(() -> new Publication.Nothing(Publication.Reason.NOT_ACTIVE));
    }

    /** Whether anything is to be written about the booking; plans it without a word in the log. */
    boolean isOwed(Bundle gathered, BookingName name) {
        ServiceRequest request = request(gathered, name.booking());
        return WITHDRAWN.contains(request.getStatus())
                ? planning.withdraw(gathered, request) instanceof Publication.Write
                : planning.plan(gathered).stream().anyMatch(each -> each.publication() instanceof Publication.Write);
    }

    private static ServiceRequest request(Bundle gathered, String booking) {
        Optional<ServiceRequest> request = gathered.getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .filter(ServiceRequest.class::isInstance)
                .map(ServiceRequest.class::cast)
                .findFirst();
        return request.orElseThrow(() -> new UnreadableRecord(
                IssueType.NOTFOUND, booking, "The booking is no longer in the record; nothing was planned."));
    }

    private static void log(String booking, Planned planned) {
        String codes = String.join(
                " ",
                planned.plan().findings().stream()
                        .map(Finding::code)
                        .map(code -> code.code())
                        .distinct()
                        .toList());
        String fate = planned.publication() instanceof Publication.Nothing nothing
                ? nothing.reason().name()
                : "WRITE";
        LOG.info(
                "{} {} {} plan {} [{}]",
                booking,
                planned.plan().state().code(),
                fate.toLowerCase(Locale.ROOT),
                planned.plan().fingerprint().brief(),
                codes);
    }
}
