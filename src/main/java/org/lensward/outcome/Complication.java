package org.lensward.outcome;

import org.lensward.finding.Coded;

/** What went otherwise than planned, during an operation or after it. */
public enum Complication implements Coded {
    /** The posterior capsule tore. */
    CAPSULE_RUPTURE,
    /** Vitreous came forward. */
    VITREOUS_LOSS,
    /** Zonules gave way. */
    ZONULE_DIALYSIS,
    /** Nucleus, or part of it, fell back. */
    DROPPED_NUCLEUS,
    /** The anterior capsule tore outwards. */
    RADIAL_TEAR,
    IRIS_INJURY,
    SUPRACHOROIDAL_HAEMORRHAGE,
    /** The cornea stayed swollen. */
    CORNEAL_OEDEMA,
    MACULAR_OEDEMA,
    ENDOPHTHALMITIS,
    RETINAL_DETACHMENT,
    /** The lens moved after it was in its place. */
    LENS_DISPLACED,
    /** Another one, told in words alone. */
    OTHER;

    /** What the rupture model foretells: capsule rupture or vitreous loss (Narendran et al., Eye 2009;23:31). */
    public boolean isRupture() {
        return this == CAPSULE_RUPTURE || this == VITREOUS_LOSS || this == DROPPED_NUCLEUS;
    }
}
