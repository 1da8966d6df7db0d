package org.lensward.demo;

import ca.uhn.fhir.batch2.jobs.config.Batch2JobsConfig;
import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.IValidationSupport;
import ca.uhn.fhir.jpa.api.config.JpaStorageSettings;
import ca.uhn.fhir.jpa.api.config.ThreadPoolFactoryConfig;
import ca.uhn.fhir.jpa.api.dao.IFhirSystemDao;
import ca.uhn.fhir.jpa.batch2.JpaBatch2Config;
import ca.uhn.fhir.jpa.binary.api.IBinaryStorageSvc;
import ca.uhn.fhir.jpa.binstore.DatabaseBinaryContentStorageSvcImpl;
import ca.uhn.fhir.jpa.config.HapiJpaConfig;
import ca.uhn.fhir.jpa.config.r4.JpaR4Config;
import ca.uhn.fhir.jpa.model.config.PartitionSettings;
import ca.uhn.fhir.jpa.model.config.SubscriptionSettings;
import ca.uhn.fhir.jpa.provider.IJpaSystemProvider;
import ca.uhn.fhir.jpa.provider.JpaCapabilityStatementProvider;
import ca.uhn.fhir.jpa.search.DatabaseBackedPagingProvider;
import ca.uhn.fhir.jpa.subscription.channel.config.SubscriptionChannelConfig;
import ca.uhn.fhir.rest.api.EncodingEnum;
import ca.uhn.fhir.rest.server.IncomingRequestAddressStrategy;
import ca.uhn.fhir.rest.server.RestfulServer;
import ca.uhn.fhir.rest.server.provider.ResourceProviderFactory;
import ca.uhn.fhir.rest.server.util.ISearchParamRegistry;
import org.springframework.boot.web.embedded.tomcat.TomcatServletWebServerFactory;
import org.springframework.boot.web.servlet.ServletRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;

/** The record's FHIR server, with no auto-configuration at all. */
@Configuration(proxyBeanMethods = false)
@Import({
    JpaR4Config.class,
    HapiJpaConfig.class,
    ThreadPoolFactoryConfig.class,
    JpaBatch2Config.class,
    Batch2JobsConfig.class,
    SubscriptionChannelConfig.class
})
class RecordConfiguration {

    @Bean
    JpaStorageSettings jpaStorageSettings() {
        JpaStorageSettings storage = new JpaStorageSettings();
        storage.setAllowExternalReferences(true);
        // A poller must never be answered from an old search.
        storage.setReuseCachedSearchResultsForMillis(null);
        storage.setMatchUrlCacheEnabled(true);
        storage.setFetchSizeDefaultMaximum(10_000);
        storage.setEnableTaskPreExpandValueSets(false);
        storage.setResourceServerIdStrategy(JpaStorageSettings.IdStrategyEnum.SEQUENTIAL_NUMERIC);
        return storage;
    }

    @Bean
    SubscriptionSettings subscriptionSettings() {
        return new SubscriptionSettings();
    }

    @Bean
    PartitionSettings partitionSettings() {
        return new PartitionSettings();
    }

    @Bean
    IBinaryStorageSvc binaryStorage() {
        return new DatabaseBinaryContentStorageSvcImpl();
    }

    @Bean
    RestfulServer restfulServer(
            FhirContext fhir,
            IFhirSystemDao<?, ?> systemDao,
            IJpaSystemProvider systemProvider,
            ResourceProviderFactory resourceProviders,
            JpaStorageSettings storage,
            ISearchParamRegistry searchParams,
            IValidationSupport validation,
            DatabaseBackedPagingProvider paging) {
        RestfulServer server = new RestfulServer(fhir);
        server.registerProviders(resourceProviders.createProviders());
        server.registerProvider(systemProvider);
        var capabilities = new JpaCapabilityStatementProvider(server, systemDao, storage, searchParams, validation);
        capabilities.setImplementationDescription("Embedded record");
        server.setServerConformanceProvider(capabilities);
        server.setDefaultResponseEncoding(EncodingEnum.JSON);
        paging.setDefaultPageSize(50);
        paging.setMaximumPageSize(1000);
        server.setPagingProvider(paging);
        server.setServerAddressStrategy(new IncomingRequestAddressStrategy());
        fhir.getParserOptions().setDontStripVersionsFromReferencesAtPaths("Provenance.entity.what");
        return server;
    }

    @Bean
    ServletRegistrationBean<RestfulServer> fhirServlet(RestfulServer server) {
        ServletRegistrationBean<RestfulServer> registration = new ServletRegistrationBean<>(server, "/fhir/*");
        registration.setName("fhir");
        registration.setLoadOnStartup(1);
        return registration;
    }

    @Bean
    TomcatServletWebServerFactory webServer(RecordSettings settings) {
        TomcatServletWebServerFactory tomcat = new TomcatServletWebServerFactory(settings.port());
        tomcat.setRegisterDefaultServlet(false);
        tomcat.addConnectorCustomizers(connector -> {
            connector.setProperty("relaxedQueryChars", "|{}[]");
            connector.setMaxPostSize(-1);
        });
        return tomcat;
    }
}
