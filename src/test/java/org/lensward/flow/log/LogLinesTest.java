package org.lensward.flow.log;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.joran.JoranConfigurator;
import ch.qos.logback.core.joran.spi.JoranException;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.slf4j.MDC;
import org.springframework.boot.SpringApplication;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.env.StandardEnvironment;

/** The shipped log configurations as logback reads them. */
class LogLinesTest {

    /** What a logger of ours writes to standard error under a shipped configuration. */
    private static String written(String configuration, StandardEnvironment environment, Consumer<Logger> says)
            throws JoranException {
        PrintStream before = System.err;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        LoggerContext context = new LoggerContext();
        context.setMDCAdapter(MDC.getMDCAdapter());
        context.putObject("org.springframework.core.env.Environment", environment);
        context.putProperty(
                "CONSOLE_LOG_STRUCTURED_FORMAT", environment.getProperty("logging.structured.format.console", ""));
        System.setErr(new PrintStream(out, true, StandardCharsets.UTF_8));
        try {
            JoranConfigurator joran = new JoranConfigurator();
            joran.setContext(context);
            joran.doConfigure(LogLinesTest.class.getResource("/" + configuration));
            says.accept(context.getLogger("org.lensward.flow.Test"));
        } finally {
            context.stop();
            System.setErr(before);
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    private static String text(Consumer<Logger> says) throws JoranException {
        return written("logback.xml", new StandardEnvironment(), says);
    }

    @Test
    void text_from_outside_cannot_forge_a_line_or_colour_it_or_turn_it_round() throws JoranException {
        String line = text(log -> log.warn(
                "refused: {}", "a\r\n00:00:00.000 INFO forged\u001b[2J\u0085\u2028\u202egnorw\u0007 Gr\u00f6\u00dfe"));
        assertThat(line.lines()).hasSize(1);
        assertThat(line.strip())
                .contains(
                        "\\u000d\\u000a00:00:00.000",
                        "\\u001b[2J",
                        "\\u0085\\u2028\\u202egnorw\\u0007",
                        "Gr\u00f6\u00dfe")
                .doesNotContainPattern("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}]");
    }

    @Test
    void a_failure_shows_its_kind_and_place_and_none_of_its_words() throws JoranException {
        Exception failure = new IllegalStateException(
                "Ada Tillwick\nforged", new NumberFormatException("For input string: \"1952-11-04\""));
        String written = text(log -> log.error("A fault", failure));
        assertThat(written)
                .contains("IllegalStateException", "caused by java.lang.NumberFormatException", "LogLinesTest")
                .doesNotContain("Tillwick", "forged", "1952");
    }

    @Test
    void a_structured_line_carries_the_booking_and_no_words_of_a_failure() throws JoranException {
        StandardEnvironment environment = new StandardEnvironment();
        environment
                .getPropertySources()
                .addFirst(new MapPropertySource("test", Map.of("logging.structured.format.console", "ecs")));
        new StructuredLog().postProcessEnvironment(environment, new SpringApplication());
        String written = written("structured-log.xml", environment, log -> {
            MDC.put("booking", "ServiceRequest/b1");
            log.error("one\ntwo", new IllegalStateException("Ada Tillwick"));
            MDC.remove("booking");
        });
        assertThat(written.lines()).singleElement().satisfies(line -> assertThat(line)
                .startsWith("{")
                .contains("\"booking\":\"ServiceRequest/b1\"", "IllegalStateException", "one\\ntwo")
                .doesNotContain("Tillwick"));
        assertThat(environment.getProperty("logging.config")).isEqualTo("classpath:structured-log.xml");
    }

    @Test
    void without_a_format_the_log_stays_as_it_is() {
        StandardEnvironment environment = new StandardEnvironment();
        new StructuredLog().postProcessEnvironment(environment, new SpringApplication());
        assertThat(environment.containsProperty("logging.config")).isFalse();
    }
}
