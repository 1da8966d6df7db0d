package org.lensward.record.incoming;

import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;

/**
 * What a site calls things.
 *
 * @param systems identifier system by assigning authority, as the authority is written in messages and files
 * @param operations SNOMED CT procedure by the site's own operation code
 * @param zone time zone of times that come without one
 */
public record Site(Map<String, String> systems, Map<String, String> operations, ZoneId zone) {

    public Site {
        systems = Map.copyOf(systems);
        operations = Map.copyOf(operations);
    }

    /** The identifier system of that authority. */
    public Optional<String> system(String authority) {
        return Optional.ofNullable(systems.get(authority));
    }

    /** The procedure that the site's code means. */
    public Optional<String> operation(String code) {
        return Optional.ofNullable(operations.get(code));
    }
}
