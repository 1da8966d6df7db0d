package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.client.apache.ApacheRestfulClientFactory;
import ca.uhn.fhir.rest.client.api.ServerValidationModeEnum;
import java.time.Duration;
import org.apache.http.impl.client.HttpClientBuilder;

/** Connections to the record. A redirection is not followed: it would carry what identifies us, and patient data, to another address. */
final class RecordConnections extends ApacheRestfulClientFactory {

    RecordConnections(FhirContext fhir, Duration timeout) {
        super(fhir);
        int millis = Math.toIntExact(timeout.toMillis());
        setServerValidationMode(ServerValidationModeEnum.NEVER);
        setConnectTimeout(millis);
        setConnectionRequestTimeout(millis);
        setSocketTimeout(millis);
        setPoolMaxPerRoute(16);
    }

    @Override
    protected HttpClientBuilder getHttpClientBuilder() {
        return super.getHttpClientBuilder().disableRedirectHandling();
    }
}
