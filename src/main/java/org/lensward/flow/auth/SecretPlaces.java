package org.lensward.flow.auth;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.env.EnvironmentPostProcessor;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.EnumerablePropertySource;
import org.springframework.core.env.PropertySource;
import org.springframework.core.env.StandardEnvironment;

/**
 * Where secrets may stand: in a file or the environment. What a process was started with can be read by every user of the machine, so a
 * secret given with {@code -D} or as an argument stops the start.
 */
public final class SecretPlaces implements EnvironmentPostProcessor {

    private static final List<String> ARGUMENTS =
            List.of(StandardEnvironment.SYSTEM_PROPERTIES_PROPERTY_SOURCE_NAME, "commandLineArgs");

    private static final Pattern SECRET =
            Pattern.compile(".*(password|passphrase|secret|token|credential|private-?key|api-?key)s?");

    private static final Pattern OURS = Pattern.compile("(lensward|spring|server|management)\\..*");

    /** Whether a setting of that name holds something to hide. */
    public static boolean isSecret(String name) {
        return SECRET.matcher(name.toLowerCase(Locale.ROOT)).matches();
    }

    @Override
    public void postProcessEnvironment(ConfigurableEnvironment environment, SpringApplication application) {
        for (PropertySource<?> source : environment.getPropertySources()) {
            if (ARGUMENTS.contains(source.getName()) && source instanceof EnumerablePropertySource<?> given) {
                refuse(given);
            }
        }
    }

    private static void refuse(EnumerablePropertySource<?> given) {
        for (String name : given.getPropertyNames()) {
            if (OURS.matcher(name).matches() && isSecret(name) && !isPlace(String.valueOf(given.getProperty(name)))) {
                throw new IllegalStateException(
                        "The setting " + name + " was given as an argument, where every user of this"
                                + " machine can read it. Put it into a file (file:/path) or into the environment.");
            }
        }
    }

    private static boolean isPlace(String value) {
        return value.isEmpty() || value.startsWith("file:") || value.startsWith("classpath:") || value.startsWith("/");
    }
}
