package org.lensward.record.bank;

import java.util.Optional;

/**
 * A carton as a person saw it before deciding.
 *
 * @param unit such as {@code Device/unit-1}
 * @param version of its Device that the person looked at; none where they decide without having looked
 */
public record Sighting(String unit, Optional<String> version) {

    /** Without a look: the carton as it is now. */
    public static Sighting asItIs(String unit) {
        return new Sighting(unit, Optional.empty());
    }

    boolean isStale(String now) {
        return version.filter(seen -> !seen.equals(now)).isPresent();
    }
}
