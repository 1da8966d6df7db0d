package org.lensward.flow;

import java.time.LocalTime;
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

    /** The time of day; empty for never. */
    Optional<LocalTime> time() {
        return at.isEmpty() ? Optional.empty() : Optional.of(LocalTime.parse(at));
    }
}
