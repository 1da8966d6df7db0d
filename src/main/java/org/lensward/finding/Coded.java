package org.lensward.finding;

import java.util.Locale;

/** An enum whose constants stand in the record under their own names, in small letters joined by hyphens. */
public interface Coded {

    /** The constant's name, as an enum has it. */
    String name();

    /** As the record carries it. */
    default String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
