package org.lensward.lens;

import java.util.Locale;

/** How a lens shares out the light along the axis. */
public enum Focus {
    MONOFOCAL,
    EXTENDED,
    MULTIFOCAL;

    /** As the record carries it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
