package org.lensward.flow;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.lensward.record.site.LocalCode;
import org.lensward.record.site.Meaning;
import org.lensward.record.site.SiteCodes;

/** Reads a hospital's code map from YAML. An unknown key, an unknown code and a changed meaning are refused by name. */
public final class SiteCodesFile {

    private static final ObjectMapper YAML = JsonMapper.builder(new YAMLFactory())
            .propertyNamingStrategy(PropertyNamingStrategies.KEBAB_CASE)
            .enable(MapperFeature.ACCEPT_CASE_INSENSITIVE_ENUMS)
            .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
            .addMixIn(LocalCode.class, AsPrinted.class)
            .addMixIn(Meaning.class, AsPrinted.class)
            .build();

    private SiteCodesFile() {}

    /** The hospital's own map, or none where it names none. */
    public static SiteCodes orNone(@Nullable Path file) {
        return file == null ? SiteCodes.none() : read(file);
    }

    /** The map in that file. */
    public static SiteCodes read(Path file) {
        try {
            return YAML.readValue(Files.readAllBytes(file), SiteCodesYaml.class).siteCodes();
        } catch (JsonProcessingException refused) {
            throw new IllegalArgumentException(
                    "The site codes in " + file + " are refused at line "
                            + (refused.getLocation() == null
                                    ? "?"
                                    : refused.getLocation().getLineNr()) + ": " + refused.getOriginalMessage(),
                    refused);
        } catch (IllegalArgumentException refused) {
            throw new IllegalArgumentException(
                    "The site codes in " + file + " are refused: " + refused.getMessage(), refused);
        } catch (IOException unreadable) {
            throw new UncheckedIOException("The site codes " + file + " cannot be read", unreadable);
        }
    }
}
