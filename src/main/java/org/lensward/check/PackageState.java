package org.lensward.check;

import java.util.Locale;

/** How a carton is found. */
public enum PackageState {
    /** Seal and sterile barrier whole. */
    INTACT,
    /** Torn, wet, crushed or doubtful. */
    DAMAGED,
    /** Opened for use. */
    OPENED;

    /** As it is said: {@code intact}. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
