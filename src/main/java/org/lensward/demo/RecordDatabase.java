package org.lensward.demo;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.jpa.api.config.JpaStorageSettings;
import ca.uhn.fhir.jpa.config.HibernatePropertiesProvider;
import ca.uhn.fhir.jpa.config.util.HapiEntityManagerFactoryUtil;
import ca.uhn.fhir.jpa.model.dialect.HapiFhirH2Dialect;
import com.zaxxer.hikari.HikariDataSource;
import jakarta.persistence.EntityManagerFactory;
import java.util.Properties;
import javax.sql.DataSource;
import org.hibernate.dialect.Dialect;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Primary;
import org.springframework.orm.jpa.JpaTransactionManager;
import org.springframework.orm.jpa.LocalContainerEntityManagerFactoryBean;

/** The record's tables, in H2. */
@Configuration(proxyBeanMethods = false)
class RecordDatabase {

    @Bean(destroyMethod = "close")
    HikariDataSource dataSource(RecordSettings settings) {
        HikariDataSource source = new HikariDataSource();
        source.setJdbcUrl(settings.jdbcUrl());
        source.setUsername("sa");
        source.setPassword("");
        source.setMaximumPoolSize(16);
        return source;
    }

    @Bean
    @Primary
    LocalContainerEntityManagerFactoryBean entityManagerFactory(
            RecordSettings settings,
            DataSource source,
            ConfigurableListableBeanFactory beans,
            FhirContext fhir,
            JpaStorageSettings storage) {
        var factory = HapiEntityManagerFactoryUtil.newEntityManagerFactory(beans, fhir, storage);
        factory.setPersistenceUnitName("HAPI_PU");
        factory.setDataSource(source);
        Properties hibernate = new Properties();
        hibernate.put("hibernate.dialect", HapiFhirH2Dialect.class.getName());
        // Comparing every table with the model ('update') is what makes a server start slowly.
        hibernate.put("hibernate.hbm2ddl.auto", settings.fresh() ? "create-only" : "none");
        hibernate.put("hibernate.jdbc.batch_size", "20");
        hibernate.put("hibernate.cache.use_query_cache", "false");
        hibernate.put("hibernate.cache.use_second_level_cache", "false");
        hibernate.put("hibernate.search.enabled", "false");
        hibernate.put("hibernate.boot.allow_jdbc_metadata_access", "false");
        // What Spring Boot's own JPA configuration would have set; the server's table names rely on it.
        hibernate.put(
                "hibernate.physical_naming_strategy",
                "org.hibernate.boot.model.naming.CamelCaseToUnderscoresNamingStrategy");
        hibernate.put(
                "hibernate.implicit_naming_strategy",
                "org.springframework.boot.orm.jpa.hibernate.SpringImplicitNamingStrategy");
        hibernate.put("hibernate.archive.scanner", "org.hibernate.boot.archive.scan.internal.DisabledScanner");
        factory.setJpaProperties(hibernate);
        return factory;
    }

    @Bean
    @Primary
    JpaTransactionManager transactionManager(EntityManagerFactory factory) {
        return new JpaTransactionManager(factory);
    }

    /** The server's own provider asks the factory for its dialect, which would close a circle at start-up. */
    @Bean
    @Primary
    HibernatePropertiesProvider fixedDialect() {
        Dialect dialect = new HapiFhirH2Dialect();
        return new HibernatePropertiesProvider() {
            @Override
            public Dialect getDialect() {
                return dialect;
            }
        };
    }
}
