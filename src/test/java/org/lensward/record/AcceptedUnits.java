package org.lensward.record;

import java.util.List;
import java.util.stream.Stream;

/** The units that are read without a note. */
public final class AcceptedUnits {

    private AcceptedUnits() {}

    /** As UCUM codes. */
    public static List<String> all() {
        return Stream.of(UnitKind.values())
                .flatMap(kind -> Stream.of(kind.accepted().split(", ")))
                .filter(unit -> !unit.isEmpty())
                .distinct()
                .sorted()
                .toList();
    }
}
