package org.lensward.flow.log;

import java.util.HashMap;
import java.util.Map;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.env.EnvironmentPostProcessor;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.MapPropertySource;

/** Where {@code logging.structured.format.console} names a format, the log is written in it, without the words of failures. */
public final class StructuredLog implements EnvironmentPostProcessor {

    private static final String FORMAT = "logging.structured.format.console";

    @Override
    public void postProcessEnvironment(ConfigurableEnvironment environment, SpringApplication application) {
        if (!environment.containsProperty(FORMAT)) {
            return;
        }
        Map<String, Object> settings = new HashMap<>();
        settings.put("logging.config", "classpath:structured-log.xml");
        settings.put("logging.structured.json.stacktrace.printer", FramesPrinter.class.getName());
        settings.put("logging.structured.json.exclude", "error.message");
        environment.getPropertySources().addLast(new MapPropertySource("structured log", settings));
    }
}
