package org.lensward.demo;

import ca.uhn.fhir.rest.server.RestfulServer;
import jakarta.persistence.EntityManagerFactory;
import java.util.Map;
import org.springframework.boot.web.server.WebServer;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.core.env.MapPropertySource;

/**
 * A running HAPI FHIR JPA R4 server in this process, standing in for the hospital's record.
 *
 * <p>It has its own Spring context, without a parent and without auto-configuration, and its own Tomcat; it shares
 * nothing with the application but the JVM.
 */
public final class EmbeddedRecord implements AutoCloseable {

    private final AnnotationConfigApplicationContext context;
    private final WebServer webServer;

    private EmbeddedRecord(AnnotationConfigApplicationContext context, WebServer webServer) {
        this.context = context;
        this.webServer = webServer;
    }

    /** Starts a record and returns once it answers requests. */
    public static EmbeddedRecord start(EmbeddedRecordSettings settings) {
        AnnotationConfigApplicationContext context = newContext(settings);
        try {
            context.refresh();
            context.getBean(EntityManagerFactory.class);
            context.getBean(RecordSchema.class).markComplete();
            // Only now: beans made before Spring freezes its configuration, as those of a web context are,
            // cost a scan of every bean definition for each injection.
            WebServer webServer = RecordWebServer.start(settings.port(), context.getBean(RestfulServer.class));
            context.getBean(RecordHousekeeping.class).start();
            return new EmbeddedRecord(context, webServer);
        } catch (RuntimeException failure) {
            context.close();
            throw failure;
        }
    }

    /** The port the record listens on. */
    public int port() {
        return webServer.getPort();
    }

    /** The FHIR base address, without a trailing slash. */
    public String baseUrl() {
        return "http://localhost:" + port() + RecordWebServer.FHIR_PATH;
    }

    @Override
    public void close() {
        // HAPI's thread pools end with the context, before Tomcat would take them for leaks of a web application
        RecordWebServer.refuseRequests(webServer);
        context.close();
        webServer.stop();
        webServer.destroy();
    }

    private static AnnotationConfigApplicationContext newContext(EmbeddedRecordSettings settings) {
        AnnotationConfigApplicationContext context = new AnnotationConfigApplicationContext(new RecordBeanFactory());
        context.setDisplayName("embedded-record");
        // RecordHousekeeping replaces the two Quartz schedulers
        context.getEnvironment()
                .getPropertySources()
                .addFirst(new MapPropertySource("embedded-record", Map.of("scheduling_disabled", "true")));
        context.getBeanFactory().registerSingleton("embeddedRecordSettings", settings);
        context.addBeanFactoryPostProcessor(new LazyBeans());
        context.register(RecordServerConfig.class);
        return context;
    }
}
