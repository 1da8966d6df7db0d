package org.lensward.flow.auth;

import java.net.URI;
import java.time.Clock;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import org.lensward.flow.AdapterSettings;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.autoconfigure.ssl.SslAutoConfiguration;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.boot.ssl.SslBundle;
import org.springframework.boot.ssl.SslBundles;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The way in to the record, as the settings say. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(AccessSettings.class)
@ImportAutoConfiguration(SslAutoConfiguration.class)
public class AccessConfiguration {

    @Bean
    RecordDoorway recordDoorway(
            AccessSettings access,
            AdapterSettings adapter,
            SslBundles bundles,
            Certificates certificates,
            SigningKeys keys) {
        Optional<SSLContext> tls = bundle(access, bundles).map(SslBundle::createSslContext);
        return new RecordDoorway(credentials(access, adapter.record(), tls, keys), tls, certificates);
    }

    @Bean
    Certificates certificates(AccessSettings access, SslBundles bundles) {
        return new Certificates(
                bundle(access, bundles).map(each -> each.getStores().getKeyStore()));
    }

    private static Optional<SslBundle> bundle(AccessSettings access, SslBundles bundles) {
        return Optional.of(access.tlsBundle()).filter(name -> !name.isEmpty()).map(bundles::getBundle);
    }

    @Bean
    SigningKeys signingKeys(AccessSettings access) {
        return new SigningKeys(access.service().keys(), Clock.systemUTC());
    }

    private static Credentials credentials(
            AccessSettings access, AdapterSettings.RecordServer record, Optional<SSLContext> tls, SigningKeys keys) {
        if (access.method() != AccessMethod.NONE && !Origin.of(record.url()).isGuarded()) {
            throw new IllegalArgumentException(
                    "lensward.record-access: " + record.url() + " is not https; nothing is shown there");
        }
        return switch (access.method()) {
            case NONE -> Credentials.none();
            case BASIC -> Credentials.basic(access.basic());
            case BACKEND_SERVICE -> tokens(access.service(), record, new PlainHttp(record.timeout(), tls), keys);
        };
    }

    private static Credentials tokens(
            AccessSettings.Service service, AdapterSettings.RecordServer record, PlainHttp http, SigningKeys keys) {
        if (service.clientId().isEmpty()) {
            throw new IllegalArgumentException("lensward.record-access.service.client-id is missing");
        }
        Optional<URI> told = Optional.ofNullable(service.tokenUrl());
        Clock clock = Clock.systemUTC();
        TokenEndpoint endpoint = new TokenEndpoint(
                new SmartDiscovery(record.url(), told, http),
                new ClientAssertion(service.clientId(), keys, clock),
                service.asked(),
                clock);
        return new TokenCredentials(endpoint, service.renewBefore(), clock);
    }
}
