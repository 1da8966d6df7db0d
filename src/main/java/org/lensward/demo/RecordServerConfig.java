package org.lensward.demo;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.jpa.api.config.ThreadPoolFactoryConfig;
import ca.uhn.fhir.jpa.cache.IResourceChangeListenerCacheRefresher;
import ca.uhn.fhir.jpa.config.HapiJpaConfig;
import ca.uhn.fhir.jpa.config.r4.FhirContextR4Config;
import ca.uhn.fhir.jpa.config.r4.JpaR4Config;
import ca.uhn.fhir.jpa.provider.IJpaSystemProvider;
import ca.uhn.fhir.jpa.search.DatabaseBackedPagingProvider;
import ca.uhn.fhir.jpa.search.IStaleSearchDeletingSvc;
import ca.uhn.fhir.rest.api.EncodingEnum;
import ca.uhn.fhir.rest.server.RestfulServer;
import ca.uhn.fhir.rest.server.provider.ResourceProviderFactory;
import ca.uhn.fhir.rest.server.provider.ServerCapabilityStatementProvider;
import ca.uhn.fhir.rest.server.util.ISearchParamRegistry;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Primary;

/** The FHIR server on top of HAPI's own configuration classes, with no Spring Boot auto-configuration. */
@Configuration(proxyBeanMethods = false)
@Import({
    JpaR4Config.class,
    HapiJpaConfig.class,
    ThreadPoolFactoryConfig.class,
    RecordBatchConfig.class,
    RecordStorageConfig.class,
    RecordDatabaseConfig.class
})
class RecordServerConfig {

    private static final int PAGE_SIZE = 50;
    private static final int LARGEST_PAGE = 1000;

    /** Takes the place of HAPI's bean of the same name. */
    @Bean
    @Primary
    FhirContext primaryFhirContext() {
        FhirContext fhir = FhirContext.forR4();
        FhirContextR4Config.configureFhirContext(fhir);
        // a plan names the versions it was made from
        fhir.getParserOptions().setStripVersionsFromReferences(false);
        fhir.setValidationSupport(new BaseTypeDefinitions(fhir));
        return fhir;
    }

    @Bean
    RestfulServer restfulServer(
            FhirContext fhirContext,
            IJpaSystemProvider systemProvider,
            ResourceProviderFactory resourceProviders,
            ISearchParamRegistry searchParameters,
            DatabaseBackedPagingProvider paging) {
        RestfulServer server = new RestfulServer(fhirContext);
        server.registerProviders(resourceProviders.createProviders());
        server.registerProvider(systemProvider);
        server.setServerConformanceProvider(
                new ServerCapabilityStatementProvider(server, searchParameters, fhirContext.getValidationSupport()));
        server.setDefaultResponseEncoding(EncodingEnum.JSON);
        paging.setDefaultPageSize(PAGE_SIZE);
        paging.setMaximumPageSize(LARGEST_PAGE);
        server.setPagingProvider(paging);
        return server;
    }

    @Bean(destroyMethod = "close")
    RecordHousekeeping recordHousekeeping(
            IResourceChangeListenerCacheRefresher searchParameters, IStaleSearchDeletingSvc staleSearches) {
        return new RecordHousekeeping(searchParameters, staleSearches);
    }
}
