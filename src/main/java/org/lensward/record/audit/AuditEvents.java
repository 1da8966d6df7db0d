package org.lensward.record.audit;

import java.util.Date;
import java.util.List;
import org.hl7.fhir.r4.model.AuditEvent;
import org.hl7.fhir.r4.model.AuditEvent.AuditEventAction;
import org.hl7.fhir.r4.model.AuditEvent.AuditEventAgentComponent;
import org.hl7.fhir.r4.model.AuditEvent.AuditEventAgentNetworkType;
import org.hl7.fhir.r4.model.AuditEvent.AuditEventOutcome;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.record.Codes;
import org.lensward.record.Systems;

/**
 * Writes deeds as AuditEvents. The pattern is that of IHE's Basic Audit Log Patterns: who asked, who carried it out, what it concerned and
 * how it ended; codes of DICOM PS3.16 (110150 application, 110153 source role, 110152 destination role) and HL7's terminology.
 */
public final class AuditEvents {

    private static final String TYPE = "http://terminology.hl7.org/CodeSystem/audit-event-type";
    private static final String INTERACTION = "http://hl7.org/fhir/restful-interaction";
    private static final String ENTITY_TYPE = "http://terminology.hl7.org/CodeSystem/audit-entity-type";
    private static final String ENTITY_ROLE = "http://terminology.hl7.org/CodeSystem/object-role";
    private static final String SOURCE_TYPE = "http://terminology.hl7.org/CodeSystem/security-source-type";

    private AuditEvents() {}

    /** All of them in one transaction. */
    public static Bundle transaction(List<Deed> deeds) {
        Bundle bundle = new Bundle().setType(BundleType.TRANSACTION);
        deeds.forEach(deed -> bundle.addEntry()
                .setResource(of(deed))
                .getRequest()
                .setMethod(HTTPVerb.POST)
                .setUrl("AuditEvent"));
        return bundle;
    }

    /** One. */
    public static AuditEvent of(Deed deed) {
        AuditEvent event = new AuditEvent();
        event.setType(new Coding(TYPE, "rest", "RESTful Operation"));
        event.addSubtype(new Coding(INTERACTION, "transaction", "transaction"));
        event.setAction(AuditEventAction.U);
        event.setRecorded(Date.from(deed.at()));
        event.setOutcome(outcome(deed.result()));
        event.setOutcomeDesc(deed.words());
        event.addAgent(asker(deed));
        event.addAgent()
                .setType(Codes.concept(Systems.DICOM, "110152", "Destination Role ID"))
                .setWho(new Reference().setDisplay("Lensward"))
                .setRequestor(false);
        event.getSource()
                .setObserver(new Reference().setDisplay("Lensward"))
                .addType(new Coding(SOURCE_TYPE, "4", "Application Server"));
        deed.about().forEach(name -> event.addEntity()
                .setWhat(what(deed, name))
                .setType(new Coding(ENTITY_TYPE, "2", "System Object"))
                .setRole(new Coding(ENTITY_ROLE, "4", "Domain Resource")));
        return event;
    }

    /** What was refused may be a name of nothing in the record, which a server refuses as a reference. */
    private static Reference what(Deed deed, String name) {
        return deed.result() == Deed.Result.DONE ? new Reference(name) : new Reference().setDisplay(name);
    }

    private static AuditEventAgentComponent asker(Deed deed) {
        AuditEventAgentComponent agent = new AuditEventAgentComponent();
        agent.setType(Codes.concept(Systems.DICOM, "110153", "Source Role ID"));
        agent.setWho(new Reference().setDisplay(deed.who()));
        agent.setRequestor(true);
        deed.roles().forEach(role -> agent.addRole(new CodeableConcept().setText(role)));
        deed.from().ifPresent(address -> agent.getNetwork().setAddress(address).setType(AuditEventAgentNetworkType._2));
        return agent;
    }

    private static AuditEventOutcome outcome(Deed.Result result) {
        return switch (result) {
            case DONE -> AuditEventOutcome._0;
            case REFUSED -> AuditEventOutcome._4;
            case FAILED -> AuditEventOutcome._8;
        };
    }
}
