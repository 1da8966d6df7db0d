package org.lensward.flow;

import jakarta.jms.ConnectionFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.camel.CamelContext;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.web.context.WebServerApplicationContext;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.env.MapPropertySource;

/** The running adapter. */
public final class Adapter implements AutoCloseable {

    private final ConfigurableApplicationContext context;

    private Adapter(ConfigurableApplicationContext context) {
        this.context = context;
    }

    /**
     * Starts it with settings of its own on top of the environment's, and nothing that people call.
     *
     * @param settings by name, such as {@code lensward.record.url}
     */
    public static Adapter start(Map<String, Object> settings) {
        return start(settings, WebApplicationType.NONE, AdapterConfiguration.class);
    }

    /**
     * Starts it with what people and theatre systems call over HTTP beside it.
     *
     * @param settings by name, such as {@code server.port}
     * @param calls the configurations of what they call
     */
    public static Adapter serve(Map<String, Object> settings, Class<?>... calls) {
        Class<?>[] all = Stream.concat(Stream.of(AdapterConfiguration.class), Stream.of(calls))
                .toArray(Class<?>[]::new);
        return start(settings, WebApplicationType.SERVLET, all);
    }

    private static Adapter start(Map<String, Object> settings, WebApplicationType web, Class<?>... configurations) {
        Map<String, Object> routes = Map.of("camel.main.routes-include-pattern", routes());
        return new Adapter(new SpringApplicationBuilder(configurations)
                .web(web)
                .logStartupInfo(false)
                .properties(routes)
                .initializers(context -> context.getEnvironment()
                        .getPropertySources()
                        .addFirst(new MapPropertySource("command", settings)))
                .run());
    }

    /** The hospital's own routes beside the application come before those inside it. */
    private static String routes() {
        return Files.isDirectory(Path.of("routes")) ? "file:routes/*.camel.yaml" : "classpath:routes/*.camel.yaml";
    }

    /** Starts the routes, where they were told not to start by themselves. */
    public void work() throws Exception {
        context.getBean(CamelContext.class).getRouteController().startAllRoutes();
    }

    /** Asks the record, as the routes do. */
    public RecordClient record() {
        return context.getBean(RecordClient.class);
    }

    /** The broker behind the routes. */
    ConnectionFactory broker() {
        return context.getBean(ConnectionFactory.class);
    }

    /** The port at which people call, where they can. */
    public int port() {
        return ((WebServerApplicationContext) context).getWebServer().getPort();
    }

    /** Finishes what is in hand, then stops. */
    @Override
    public void close() {
        context.close();
    }
}
