package org.lensward.board.cds;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Date;
import java.util.List;
import java.util.UUID;
import org.hl7.fhir.r4.model.AuditEvent;
import org.hl7.fhir.r4.model.AuditEvent.AuditEventAction;
import org.hl7.fhir.r4.model.AuditEvent.AuditEventEntityComponent;
import org.hl7.fhir.r4.model.AuditEvent.AuditEventOutcome;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.lensward.flow.RecordClient;
import org.lensward.record.Systems;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Feedback as AuditEvents in the record. They name card, service, client and booking; no patient, no comment. */
final class FeedbackTrail {

    private static final Logger LOG = LoggerFactory.getLogger(FeedbackTrail.class);

    private final RecordClient record;
    private final GivenCards given;
    private final Clock clock;

    FeedbackTrail(RecordClient record, GivenCards given, Clock clock) {
        this.record = record;
        this.given = given;
        this.clock = clock;
    }

    /** Writes what was said, all or nothing; said again, it overwrites itself. */
    void write(String service, String caller, List<Feedback> said) {
        Bundle transaction = new Bundle().setType(BundleType.TRANSACTION);
        said.stream().map(each -> event(service, caller, each)).forEach(event -> transaction
                .addEntry()
                .setResource(event)
                .getRequest()
                .setMethod(HTTPVerb.PUT)
                .setUrl("AuditEvent/" + event.getIdElement().getIdPart()));
        if (!said.isEmpty()) {
            record.post(transaction);
        }
        long overridden = said.stream()
                .filter(each -> each.outcome().equals("overridden"))
                .count();
        LOG.info("{} feedback: {} overridden of {}", service, overridden, said.size());
    }

    private AuditEvent event(String service, String caller, Feedback said) {
        AuditEvent event = new AuditEvent();
        String about =
                String.join(" ", service, said.card(), said.outcome(), said.at().toString());
        event.setId(
                UUID.nameUUIDFromBytes(about.getBytes(StandardCharsets.UTF_8)).toString());
        event.setType(new Coding(Systems.DICOM, "110100", "Application Activity"));
        event.setAction(AuditEventAction.E);
        event.getPeriod().setStart(Date.from(said.at())).setEnd(Date.from(said.at()));
        event.setRecorded(Date.from(clock.instant()));
        event.setOutcome(AuditEventOutcome._0);
        event.addAgent()
                .setAltId(caller)
                .setRequestor(true)
                .getType()
                .addCoding(new Coding(Systems.DICOM, "110150", "Application"));
        event.getSource().setObserver(new Reference().setDisplay("Lensward"));
        entity(event.addEntity(), service, said);
        return event;
    }

    private void entity(AuditEventEntityComponent entity, String service, Feedback said) {
        given.booking(said.card()).ifPresent(booking -> entity.setWhat(new Reference(booking)));
        entity.setName("CDS Hooks card");
        detail(entity, "service", service);
        detail(entity, "card", said.card());
        detail(entity, "outcome", said.outcome());
        said.reason().ifPresent(reason -> detail(entity, "override-reason", reason));
    }

    private static void detail(AuditEventEntityComponent entity, String type, String value) {
        entity.addDetail().setType(type).setValue(new StringType(value));
    }
}
