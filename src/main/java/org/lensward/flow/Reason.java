package org.lensward.flow;

import ca.uhn.fhir.rest.client.exceptions.FhirClientConnectionException;
import ca.uhn.fhir.rest.server.exceptions.BaseServerResponseException;
import org.apache.camel.Exchange;
import org.apache.camel.ExchangeProperty;
import org.lensward.record.UnreadableRecord;

/** Why something failed, as a code that operators look up and filter by; never a server's own words, which may hold patient data. */
public final class Reason {

    /** The record does not answer, or breaks off, or answers what is no FHIR. */
    public static final String AWAY = "record-away";

    /** What a message is given that the broker set aside by itself, after the adapter had failed ten times with it in hand. */
    public static final String GIVEN_UP = "given-up-by-broker";

    private Reason() {}

    /** The code of a failure, such as {@code record-answered-503}. */
    public static String of(Throwable failure) {
        if (failure instanceof FhirClientConnectionException) {
            return AWAY;
        }
        if (failure instanceof BaseServerResponseException answer) {
            return answered(answer.getStatusCode());
        }
        if (failure instanceof RecordRefusal refusal) {
            return refusal.reason();
        }
        return failure instanceof UnreadableRecord
                ? "cannot-be-read"
                : "fault-" + failure.getClass().getSimpleName();
    }

    /** For the routes: the code of the failure in hand. */
    public static String code(@ExchangeProperty(Exchange.EXCEPTION_CAUGHT) Exception failure) {
        return of(failure);
    }

    /** In words, where the words are ours; empty otherwise. */
    public static String detail(@ExchangeProperty(Exchange.EXCEPTION_CAUGHT) Exception failure) {
        return failure instanceof RecordRefusal || failure instanceof UnreadableRecord
                ? String.valueOf(failure.getMessage())
                : "";
    }

    static String answered(int status) {
        return status < 100 ? AWAY : "record-answered-" + status;
    }
}
