package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.server.exceptions.BaseServerResponseException;
import org.lensward.flow.AdapterSettings.Ready;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Asks the record, before anything flows, what it offers. A record that is away may come back: that is no reason not to start. */
final class StartCheck {

    private static final Logger LOG = LoggerFactory.getLogger(StartCheck.class);

    private final FhirContext fhir;
    private final RecordClient client;
    private final HintSettings hints;
    private final Ready ready;

    StartCheck(FhirContext fhir, RecordClient client, HintSettings hints, AdapterSettings settings) {
        this.fhir = fhir;
        this.client = client;
        this.hints = hints;
        this.ready = settings.ready();
    }

    /** Whether the adapter may work with this record. */
    boolean passes() {
        try {
            boolean passes = ready == Ready.OFF || offersEnough();
            if (passes && !hints.secret().isEmpty() && !hints.endpoint().isEmpty()) {
                client.post(HintSubscriptions.transaction(hints));
                LOG.info("Subscriptions written: the record hints at changes");
            }
            return passes;
        } catch (BaseServerResponseException | RecordRefusal failure) {
            LOG.warn("The record was not looked at before the start: {}", Reason.of(failure));
            return true;
        }
    }

    private boolean offersEnough() {
        Readiness readiness = Readiness.of(fhir, client.capabilities());
        readiness.missing().forEach(each -> LOG.warn("The record does not say that it offers {}", each));
        return readiness.mayRun() || ready == Ready.WARN;
    }
}
