package org.lensward.flow;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.lensward.plan.Policy;
import org.lensward.quantity.CellsPerSquareMillimetre;
import org.lensward.quantity.Days;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Kilometres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.MillimetresOfMercury;
import org.lensward.quantity.Percent;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;
import org.lensward.quantity.Seconds;

/** Reads the hospital's policy from YAML. Every value must be there; an unknown or a missing one is refused by name. */
public final class PolicyFile {

    private static final ObjectMapper YAML = JsonMapper.builder(new YAMLFactory())
            .propertyNamingStrategy(PropertyNamingStrategies.KEBAB_CASE)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
            .build();

    static {
        List.of(
                        Millimetres.class,
                        Dioptres.class,
                        Degrees.class,
                        PureNumber.class,
                        Probability.class,
                        MillimetresOfMercury.class,
                        CellsPerSquareMillimetre.class,
                        Percent.class,
                        Seconds.class,
                        Days.class,
                        Kilometres.class)
                .forEach(type -> YAML.addMixIn(type, AsPrinted.class));
    }

    private PolicyFile() {}

    /** The policy that ships with the application. */
    public static Policy shipped() {
        return shipped("/policy.yaml", Policy.class);
    }

    /** The hospital's own policy, or the shipped one where it names none. */
    public static Policy orShipped(@Nullable Path file) {
        return file == null ? shipped() : read(file);
    }

    /** A hospital's own policy. */
    public static Policy read(Path file) {
        return read(file, Policy.class);
    }

    /** What a file of the application says. */
    static <T> T shipped(String resource, Class<T> policy) {
        try (InputStream file = PolicyFile.class.getResourceAsStream(resource)) {
            return read(
                    Objects.requireNonNull(file, resource + " is in the application")
                            .readAllBytes(),
                    "the shipped policy",
                    policy);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** What a hospital's file says. */
    static <T> T read(Path file, Class<T> policy) {
        try {
            return read(Files.readAllBytes(file), file.toString(), policy);
        } catch (IOException unreadable) {
            throw new UncheckedIOException("The policy " + file + " cannot be read", unreadable);
        }
    }

    private static <T> T read(byte[] yaml, String name, Class<T> policy) throws IOException {
        try {
            return YAML.readValue(yaml, policy);
        } catch (JsonProcessingException refused) {
            throw new IllegalArgumentException(
                    "The policy in " + name + " is refused: " + refused.getOriginalMessage(), refused);
        }
    }
}
