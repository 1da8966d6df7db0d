package org.lensward.board.day;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How old the Day page may be, under {@code lensward.day.*}.
 *
 * @param every pause between two readings of plans and checks while somebody looks
 * @param stockEvery the same for the bank, which is read whole
 * @param restAfter how long after the last look nothing is read any more
 */
@ConfigurationProperties("lensward.day")
public record DaySettings(
        @DefaultValue("5s") Duration every,
        @DefaultValue("60s") Duration stockEvery,
        @DefaultValue("2m") Duration restAfter) {}
