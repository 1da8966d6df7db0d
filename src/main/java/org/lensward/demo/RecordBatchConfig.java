package org.lensward.demo;

import ca.uhn.fhir.batch2.api.IJobCoordinator;
import ca.uhn.fhir.batch2.api.IJobPartitionProvider;
import ca.uhn.fhir.batch2.api.IJobPersistence;
import ca.uhn.fhir.batch2.coordinator.DefaultJobPartitionProvider;
import ca.uhn.fhir.batch2.coordinator.JobCoordinatorImpl;
import ca.uhn.fhir.batch2.coordinator.JobDefinitionRegistry;
import ca.uhn.fhir.batch2.jobs.parameters.UrlPartitioner;
import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.interceptor.api.IInterceptorBroadcaster;
import ca.uhn.fhir.interceptor.api.IInterceptorService;
import ca.uhn.fhir.jpa.batch2.JpaJobPersistenceImpl;
import ca.uhn.fhir.jpa.dao.data.IBatch2JobInstanceRepository;
import ca.uhn.fhir.jpa.dao.data.IBatch2WorkChunkMetadataViewRepository;
import ca.uhn.fhir.jpa.dao.data.IBatch2WorkChunkRepository;
import ca.uhn.fhir.jpa.dao.tx.IHapiTransactionService;
import ca.uhn.fhir.jpa.partition.IRequestPartitionHelperSvc;
import ca.uhn.fhir.jpa.searchparam.MatchUrlService;
import jakarta.persistence.EntityManager;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * The batch services HAPI's resource services refer to, with no job registered and no channel to run one: asking for
 * one, such as a bulk export, is refused as an unknown job.
 */
@Configuration(proxyBeanMethods = false)
class RecordBatchConfig {

    @Bean
    JobDefinitionRegistry jobDefinitionRegistry() {
        return new JobDefinitionRegistry();
    }

    @Bean
    IJobPersistence jobPersistence(
            IBatch2JobInstanceRepository instances,
            IBatch2WorkChunkRepository chunks,
            IBatch2WorkChunkMetadataViewRepository chunkMetadata,
            IHapiTransactionService transactions,
            EntityManager entityManager,
            IInterceptorBroadcaster interceptors) {
        return new JpaJobPersistenceImpl(instances, chunks, chunkMetadata, transactions, entityManager, interceptors);
    }

    @Bean
    IJobCoordinator jobCoordinator(
            IJobPersistence persistence,
            JobDefinitionRegistry definitions,
            IHapiTransactionService transactions,
            IInterceptorService interceptors) {
        return new JobCoordinatorImpl(persistence, definitions, transactions, interceptors);
    }

    @Bean
    IJobPartitionProvider jobPartitionProvider(
            FhirContext fhir, IRequestPartitionHelperSvc partitions, MatchUrlService matchUrls) {
        return new DefaultJobPartitionProvider(fhir, partitions, matchUrls);
    }

    @Bean
    UrlPartitioner urlPartitioner(MatchUrlService matchUrls, IRequestPartitionHelperSvc partitions) {
        return new UrlPartitioner(matchUrls, partitions);
    }
}
