package org.lensward.board.outcome;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How the outcomes page is kept, under {@code lensward.outcomes.*}.
 *
 * @param stands how long what was read stands before a look reads the record again
 * @param policy the hospital's outcome policy; empty for the shipped one
 */
@ConfigurationProperties("lensward.outcomes")
public record OutcomeSettings(
        @DefaultValue("24h") Duration stands,
        @DefaultValue("") String policy) {}
