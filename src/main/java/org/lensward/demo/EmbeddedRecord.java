package org.lensward.demo;

import org.springframework.boot.LazyInitializationBeanFactoryPostProcessor;
import org.springframework.boot.web.servlet.context.AnnotationConfigServletWebServerApplicationContext;

/** A real FHIR R4 server in this process: its own Spring context, its own Tomcat, nothing shared with the adapter but the JVM. */
public final class EmbeddedRecord implements AutoCloseable {

    private final AnnotationConfigServletWebServerApplicationContext context;

    private EmbeddedRecord(AnnotationConfigServletWebServerApplicationContext context) {
        this.context = context;
    }

    /** Starts it; returns when it answers. */
    public static EmbeddedRecord start(RecordSettings settings) {
        var context = new AnnotationConfigServletWebServerApplicationContext();
        context.setDisplayName("record");
        context.getBeanFactory().registerSingleton("recordSettings", settings);
        context.register(RecordConfiguration.class, RecordDatabase.class);
        // Whatever no request asks for is never built: job schedulers, terminology loaders, other versions' daos.
        context.addBeanFactoryPostProcessor(new LazyInitializationBeanFactoryPostProcessor());
        context.refresh();
        return new EmbeddedRecord(context);
    }

    /** Where it listens. */
    public String baseUrl() {
        return "http://localhost:" + context.getWebServer().getPort() + "/fhir";
    }

    @Override
    public void close() {
        context.close();
    }
}
