package org.lensward.lens;

import java.util.Locale;

/** What the optic is made of. */
public enum OpticMaterial {
    HYDROPHOBIC_ACRYLIC,
    HYDROPHILIC_ACRYLIC,
    SILICONE,
    PMMA;

    /** As the record carries it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
