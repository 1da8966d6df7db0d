package org.lensward.demo;

import ca.uhn.fhir.jpa.api.config.JpaStorageSettings;
import ca.uhn.fhir.jpa.api.config.JpaStorageSettings.ClientIdStrategyEnum;
import ca.uhn.fhir.jpa.api.config.JpaStorageSettings.IdStrategyEnum;
import ca.uhn.fhir.jpa.binary.api.IBinaryStorageSvc;
import ca.uhn.fhir.jpa.binstore.DatabaseBinaryContentStorageSvcImpl;
import ca.uhn.fhir.jpa.cache.ISearchParamIdentityCacheSvc;
import ca.uhn.fhir.jpa.dao.data.IResourceIndexedSearchParamIdentityDao;
import ca.uhn.fhir.jpa.model.config.PartitionSettings;
import ca.uhn.fhir.jpa.model.config.SubscriptionSettings;
import ca.uhn.fhir.jpa.sp.SearchParamIdentityCacheSvcImpl;
import ca.uhn.fhir.jpa.util.MemoryCacheService;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.transaction.PlatformTransactionManager;

/** How the record stores, indexes and searches. */
@Configuration(proxyBeanMethods = false)
class RecordStorageConfig {

    private static final int MOST_RESULTS = 10_000;

    @Bean
    JpaStorageSettings jpaStorageSettings() {
        JpaStorageSettings storage = new JpaStorageSettings();
        // a poller must never be answered from a search made up to a minute ago
        storage.setReuseCachedSearchResultsForMillis(null);
        storage.setResourceClientIdStrategy(ClientIdStrategyEnum.ALPHANUMERIC);
        storage.setResourceServerIdStrategy(IdStrategyEnum.SEQUENTIAL_NUMERIC);
        storage.setEnforceReferentialIntegrityOnWrite(true);
        storage.setEnforceReferentialIntegrityOnDelete(true);
        storage.setAllowExternalReferences(true);
        storage.setMatchUrlCacheEnabled(true);
        storage.setFetchSizeDefaultMaximum(MOST_RESULTS);
        // a batch runs on its own request's thread; HAPI never ends the pool it would make for more
        storage.setBundleBatchPoolSize(1);
        storage.setHibernateSearchIndexFullText(false);
        storage.setHibernateSearchIndexSearchParams(false);
        storage.setWriteToSearchParamIdentityTable(false);
        // re-indexing is a batch job, and the record runs none: post search parameters before the data they index
        storage.setMarkResourcesForReindexingUponSearchParameterChange(false);
        storage.setEnableTaskPreExpandValueSets(false);
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
    IBinaryStorageSvc binaryStorageSvc() {
        return new DatabaseBinaryContentStorageSvcImpl();
    }

    /** Takes the place of HAPI's bean of the same name: there are no identities to read back, since none are written. */
    @Bean
    ISearchParamIdentityCacheSvc searchParamIdentityCacheSvc(
            JpaStorageSettings storage,
            IResourceIndexedSearchParamIdentityDao identities,
            PlatformTransactionManager transactions,
            MemoryCacheService cache) {
        return new SearchParamIdentityCacheSvcImpl(storage, identities, transactions, cache) {
            @Override
            protected void initCache() {
                // reading an always empty table costs an HQL parser at start-up
            }
        };
    }
}
