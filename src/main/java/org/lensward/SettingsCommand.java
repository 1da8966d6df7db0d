package org.lensward;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import org.lensward.flow.auth.SecretPlaces;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.origin.OriginLookup;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.EnumerablePropertySource;
import org.springframework.core.env.PropertySource;
import org.springframework.core.env.StandardEnvironment;
import picocli.CommandLine.Command;

/** Shows every setting as the adapter would take it, and where it stands; what is secret is not shown. */
@Command(
        name = "settings",
        mixinStandardHelpOptions = true,
        description = "Prints the settings the adapter would run with and where each stands; secrets are masked.")
final class SettingsCommand implements Callable<Integer> {

    private static final Pattern OURS =
            Pattern.compile("(lensward|server|management|logging|spring\\.(artemis|ssl|security))\\..*");

    /** A name and password inside an address. */
    private static final Pattern USER_INFO = Pattern.compile("//[^/@\\s]*@");

    /** Nothing is started. */
    @Configuration(proxyBeanMethods = false)
    static class Nothing {}

    @Override
    public Integer call() {
        try (ConfigurableApplicationContext context = new SpringApplicationBuilder(Nothing.class)
                .web(WebApplicationType.NONE)
                .logStartupInfo(false)
                .run()) {
            print(context.getEnvironment()).forEach((name, value) -> System.out.println(name + " = " + value));
        }
        return 0;
    }

    private static Map<String, String> print(ConfigurableEnvironment environment) {
        Map<String, String> settings = new TreeMap<>();
        for (PropertySource<?> source : environment.getPropertySources()) {
            if (source instanceof EnumerablePropertySource<?> named) {
                for (String name : named.getPropertyNames()) {
                    String setting = name(source, name);
                    if (OURS.matcher(setting).matches()) {
                        settings.putIfAbsent(setting, shown(environment, setting) + "   (" + place(source, name) + ")");
                    }
                }
            }
        }
        return settings;
    }

    /** An environment variable as the setting it stands for. */
    private static String name(PropertySource<?> source, String name) {
        return source.getName().equals(StandardEnvironment.SYSTEM_ENVIRONMENT_PROPERTY_SOURCE_NAME)
                ? name.toLowerCase(Locale.ROOT).replace("_", ".")
                : name;
    }

    private static String shown(ConfigurableEnvironment environment, String name) {
        if (SecretPlaces.isSecret(name.replace(".", "")) || SecretPlaces.isSecret(name)) {
            return "***";
        }
        String value = environment.getProperty(name, "");
        return USER_INFO.matcher(value).replaceAll("//***@");
    }

    private static String place(PropertySource<?> source, String name) {
        var origin = OriginLookup.getOrigin(source, name);
        return origin == null ? source.getName() : origin.toString();
    }
}
