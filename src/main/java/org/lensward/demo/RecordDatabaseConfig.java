package org.lensward.demo;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.jpa.api.config.JpaStorageSettings;
import ca.uhn.fhir.jpa.config.HibernatePropertiesProvider;
import ca.uhn.fhir.jpa.config.util.HapiEntityManagerFactoryUtil;
import ca.uhn.fhir.jpa.model.dialect.HapiFhirH2Dialect;
import ca.uhn.fhir.jpa.model.dialect.HapiFhirPostgresDialect;
import com.zaxxer.hikari.HikariDataSource;
import jakarta.persistence.EntityManagerFactory;
import java.util.Map;
import java.util.Properties;
import javax.sql.DataSource;
import org.hibernate.boot.archive.scan.internal.DisabledScanner;
import org.hibernate.boot.model.naming.CamelCaseToUnderscoresNamingStrategy;
import org.hibernate.dialect.Dialect;
import org.hibernate.query.sqm.mutation.internal.temptable.GlobalTemporaryTableStrategy;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;
import org.springframework.boot.orm.jpa.hibernate.SpringImplicitNamingStrategy;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Primary;
import org.springframework.orm.jpa.JpaTransactionManager;
import org.springframework.orm.jpa.LocalContainerEntityManagerFactoryBean;

/** The record's database and Hibernate on top of it. */
@Configuration(proxyBeanMethods = false)
class RecordDatabaseConfig {

    @Bean(destroyMethod = "close")
    HikariDataSource dataSource(EmbeddedRecordSettings settings) {
        HikariDataSource pool = new HikariDataSource();
        pool.setPoolName("embedded-record");
        pool.setJdbcUrl(settings.jdbcUrl());
        if (!settings.isPostgres()) {
            pool.setUsername("sa");
            pool.setPassword("");
        }
        pool.setMaximumPoolSize(settings.connections());
        // H2 forgets a database in memory with its last connection, so one is kept for as long as the pool
        pool.setMinimumIdle(1);
        pool.setMaxLifetime(0);
        return pool;
    }

    @Bean
    RecordSchema recordSchema(DataSource database) {
        return new RecordSchema(database);
    }

    @Bean
    @Primary
    LocalContainerEntityManagerFactoryBean entityManagerFactory(
            ConfigurableListableBeanFactory beans,
            FhirContext fhir,
            JpaStorageSettings storage,
            RecordSchema schema,
            Dialect dialect) {
        LocalContainerEntityManagerFactoryBean factory =
                HapiEntityManagerFactoryUtil.newEntityManagerFactory(beans, fhir, storage);
        factory.setPersistenceUnitName("embedded-record");
        factory.setDataSource(schema.database());
        factory.setJpaProperties(hibernate(schema.action(), dialect));
        return factory;
    }

    @Bean
    @Primary
    JpaTransactionManager transactionManager(EntityManagerFactory entityManagers) {
        return new JpaTransactionManager(entityManagers);
    }

    @Bean
    Dialect dialect(EmbeddedRecordSettings settings) {
        return settings.isPostgres() ? new HapiFhirPostgresDialect() : new HapiFhirH2Dialect();
    }

    /** HAPI's own provider asks the entity manager factory for its dialect, which closes a circle at start-up. */
    @Bean
    @Primary
    HibernatePropertiesProvider fixedDialect(Dialect dialect) {
        return new HibernatePropertiesProvider() {
            @Override
            public Dialect getDialect() {
                return dialect;
            }
        };
    }

    private static Properties hibernate(String schemaAction, Dialect dialect) {
        Properties properties = new Properties();
        // without Bean Validation Hibernate checks for nulls itself, and HAPI leaves its partition column null
        properties.put("hibernate.check_nullability", "false");
        // HAPI runs no statement that would need them, and making some sixty tables fails noisily on one
        properties.put(GlobalTemporaryTableStrategy.CREATE_ID_TABLES, "false");
        properties.put(GlobalTemporaryTableStrategy.DROP_ID_TABLES, "false");
        properties.putAll(Map.of(
                "hibernate.dialect",
                dialect.getClass().getName(),
                "hibernate.hbm2ddl.auto",
                schemaAction,
                "hibernate.cache.use_query_cache",
                "false",
                "hibernate.cache.use_second_level_cache",
                "false",
                "hibernate.search.enabled",
                "false",
                "hibernate.integration.envers.enabled",
                "false",
                "jakarta.persistence.validation.mode",
                "none",
                "hibernate.archive.scanner",
                DisabledScanner.class.getName(),
                // HAPI's table names rely on the naming strategies of Spring Boot's JPA auto-configuration
                "hibernate.physical_naming_strategy",
                CamelCaseToUnderscoresNamingStrategy.class.getName(),
                "hibernate.implicit_naming_strategy",
                SpringImplicitNamingStrategy.class.getName()));
        return properties;
    }
}
