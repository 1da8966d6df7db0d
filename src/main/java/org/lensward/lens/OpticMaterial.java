package org.lensward.lens;

import org.lensward.finding.Coded;

/** What the optic is made of. */
public enum OpticMaterial implements Coded {
    HYDROPHOBIC_ACRYLIC,
    HYDROPHILIC_ACRYLIC,
    SILICONE,
    PMMA;
}
