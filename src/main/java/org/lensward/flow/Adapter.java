package org.lensward.flow;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.apache.camel.CamelContext;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.env.MapPropertySource;

/** The running adapter. */
public final class Adapter implements AutoCloseable {

    private final ConfigurableApplicationContext context;

    private Adapter(ConfigurableApplicationContext context) {
        this.context = context;
    }

    /**
     * Starts it with settings of its own on top of the environment's.
     *
     * @param settings by name, such as {@code lensward.record.url}
     */
    public static Adapter start(Map<String, Object> settings) {
        Map<String, Object> routes = Map.of("camel.main.routes-include-pattern", routes());
        return new Adapter(new SpringApplicationBuilder(AdapterConfiguration.class)
                .web(WebApplicationType.NONE)
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

    /** Finishes what is in hand, then stops. */
    @Override
    public void close() {
        context.close();
    }
}
