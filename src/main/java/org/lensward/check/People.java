package org.lensward.check;

import java.util.Optional;

/**
 * Who answers for a checkpoint, as the record refers to them.
 *
 * @param reader who read and scanned
 * @param second who checked it
 */
public record People(Optional<String> reader, Optional<String> second) {

    public People {
        reader = reader.map(String::strip).filter(each -> !each.isEmpty());
        second = second.map(String::strip).filter(each -> !each.isEmpty());
    }

    /** Whether two persons are named, and not one twice. */
    public boolean areTwo() {
        return reader.isPresent() && second.isPresent() && !reader.equals(second);
    }
}
