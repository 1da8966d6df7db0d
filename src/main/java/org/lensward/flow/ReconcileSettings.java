package org.lensward.flow;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.Optional;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * The nightly look over everything, under {@code lensward.reconcile.*}.
 *
 * @param at time of day in the hospital's zone, such as {@code 02:30}; empty for never
 */
@ConfigurationProperties("lensward.reconcile")
public record ReconcileSettings(@DefaultValue("02:30") String at) {

    /** The next time that it is due after that moment; empty for never. */
    Optional<Instant> after(ZonedDateTime now) {
        if (at.isEmpty()) {
            return Optional.empty();
        }
        ZonedDateTime today = now.with(LocalTime.parse(at));
        return Optional.of((today.isAfter(now) ? today : today.plusDays(1)).toInstant());
    }
}
