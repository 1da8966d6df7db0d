package org.lensward.flow;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Patient;
import org.lensward.record.Shelf;
import org.lensward.record.hl7.LensOrder;
import org.lensward.record.incoming.Site;

/** The lenses of the plans as orders for a site that wants them as messages. What was sent already is told by the route. */
public final class LensOrders {

    /** Requests older than this have been sent or are of no use. */
    private static final Duration BACK = Duration.ofDays(30);

    private final RecordClient client;
    private final Site site;
    private final Clock clock;

    public LensOrders(RecordClient client, Site site, Clock clock) {
        this.client = client;
        this.site = site;
        this.clock = clock;
    }

    /** Every order of the last weeks, as the record has it now. */
    public List<LensOrder> look() {
        Instant now = clock.instant();
        Bundle gathered = client.gather(List.of("DeviceRequest?intent=plan&_lastUpdated=ge"
                + now.minus(BACK).truncatedTo(ChronoUnit.SECONDS) + "&_include=DeviceRequest:subject&_count=200"));
        Shelf shelf = new Shelf(gathered);
        return shelf.all(DeviceRequest.class)
                .filter(request -> request.getIdElement().getIdPart().startsWith("plan-"))
                .flatMap(request -> shelf
                        .find(Patient.class, request.getSubject())
                        .map(patient -> LensOrder.of(request, patient, site, now))
                        .stream())
                .toList();
    }
}
