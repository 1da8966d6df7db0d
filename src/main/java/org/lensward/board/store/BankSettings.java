package org.lensward.board.store;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.validation.annotation.Validated;

/**
 * How the Bank page is kept, under {@code lensward.bank.*}.
 *
 * @param refresh pause between two looks for cartons that changed, while somebody has the page open
 * @param check pause between two stock checks
 * @param days how many days ahead lenses are looked for, today included
 */
@Validated
@ConfigurationProperties("lensward.bank")
public record BankSettings(
        @DefaultValue("5s") Duration refresh,
        @DefaultValue("30s") Duration check,
        @Min(1) @Max(90) @DefaultValue("21") int days) {}
