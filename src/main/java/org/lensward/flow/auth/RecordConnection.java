package org.lensward.flow.auth;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.api.RequestTypeEnum;
import ca.uhn.fhir.rest.client.apache.ApacheRestfulClientFactory;
import ca.uhn.fhir.rest.client.api.Header;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import ca.uhn.fhir.rest.client.api.IHttpClient;
import ca.uhn.fhir.rest.client.api.IRestfulClientFactory;
import ca.uhn.fhir.rest.client.api.ServerValidationModeEnum;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.apache.http.client.config.RequestConfig;
import org.apache.http.impl.client.HttpClientBuilder;
import org.apache.http.impl.execchain.ClientExecChain;
import org.jspecify.annotations.Nullable;

/**
 * HAPI's client over an HTTP client that shows our credentials to the record alone. HAPI asks the factory of its context for each
 * request, so this one becomes that; what others ask of other servers through the same context goes as it went before.
 */
public final class RecordConnection extends ApacheRestfulClientFactory {

    private static final int CONNECTIONS = 16;

    private final Origin record;
    private final IRestfulClientFactory others;

    private RecordConnection(FhirContext fhir, URI url, Duration timeout, RecordDoorway door) {
        super(fhir);
        this.record = Origin.of(url);
        this.others = fhir.getRestfulClientFactory();
        setServerValidationMode(ServerValidationModeEnum.NEVER);
        setHttpClient(client(record, timeout, door));
    }

    /**
     * A client of one record.
     *
     * @param fhir FHIR R4
     * @param url the record's base address
     * @param timeout the longest wait for an answer
     * @param door what is shown there
     */
    public static IGenericClient to(FhirContext fhir, URI url, Duration timeout, RecordDoorway door) {
        RecordConnection connection = new RecordConnection(fhir, url, timeout, door);
        fhir.setRestfulClientFactory(connection);
        IGenericClient client = connection.newGenericClient(url.toString());
        client.registerInterceptor(new OwnAddressOnly(connection.record));
        return client;
    }

    @Override
    public synchronized IHttpClient getHttpClient(
            StringBuilder url,
            @Nullable Map<String, List<String>> ifNoneExist,
            @Nullable String ifNoneExistText,
            @Nullable RequestTypeEnum type,
            @Nullable List<Header> headers) {
        return record.isSame(URI.create(url.toString()))
                ? super.getHttpClient(url, ifNoneExist, ifNoneExistText, type, headers)
                : others.getHttpClient(url, ifNoneExist, ifNoneExistText, type, headers);
    }

    private static Object client(Origin record, Duration timeout, RecordDoorway door) {
        int millis = Math.toIntExact(timeout.toMillis());
        HttpClientBuilder builder = new Guarded(record, door.credentials())
                .useSystemProperties()
                .setDefaultRequestConfig(RequestConfig.custom()
                        .setConnectTimeout(millis)
                        .setConnectionRequestTimeout(millis)
                        .setSocketTimeout(millis)
                        .build())
                .setMaxConnPerRoute(CONNECTIONS)
                .setMaxConnTotal(CONNECTIONS)
                .setConnectionTimeToLive(DEFAULT_CONNECTION_TTL, TimeUnit.MILLISECONDS)
                .disableCookieManagement()
                .disableAuthCaching()
                .disableRedirectHandling();
        builder.addInterceptorLast(new ShownCertificate(door.certificates()));
        door.tls().ifPresent(builder::setSSLContext);
        return builder.build();
    }

    /** Apache's builder with the exchange guarded. */
    private static final class Guarded extends HttpClientBuilder {

        private final Origin record;
        private final Credentials credentials;

        Guarded(Origin record, Credentials credentials) {
            this.record = record;
            this.credentials = credentials;
        }

        @Override
        protected ClientExecChain decorateProtocolExec(ClientExecChain exchange) {
            return new GuardedExchange(exchange, record, credentials);
        }
    }
}
