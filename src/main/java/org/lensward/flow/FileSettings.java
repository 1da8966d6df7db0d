package org.lensward.flow;

import jakarta.validation.constraints.Min;
import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.validation.annotation.Validated;

/**
 * Biometry in files, under {@code lensward.files.*}.
 *
 * @param folder the watched folder; empty watches none
 * @param settledAfter how long a file must have stayed as it is before it is read
 * @param longest most bytes of one file
 */
@Validated
@ConfigurationProperties("lensward.files")
public record FileSettings(
        @DefaultValue("") String folder,
        @DefaultValue("2s") Duration settledAfter,
        @Min(1024) @DefaultValue("20971520") long longest) {}
