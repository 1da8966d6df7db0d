package org.lensward.board.gate;

import jakarta.validation.constraints.Min;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;
import org.springframework.validation.annotation.Validated;

/**
 * How much a caller may ask, under {@code lensward.limits.*}.
 *
 * @param perPerson requests a minute of one signed-in person or system; at rest as many may come at once
 * @param perAddress requests a minute from one network address, signed in or not
 * @param body most bytes of what is sent in one request
 */
@Validated
@ConfigurationProperties("lensward.limits")
public record LimitSettings(
        @Min(1) @DefaultValue("600") int perPerson,
        @Min(1) @DefaultValue("3000") int perAddress,
        @DefaultValue("1MB") DataSize body) {}
