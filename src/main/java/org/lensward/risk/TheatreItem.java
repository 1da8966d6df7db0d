package org.lensward.risk;

import java.util.Locale;
import org.lensward.finding.Coded;

/** What has to lie ready in theatre, by kind; a hospital's own articles stand behind each. */
public enum TheatreItem implements Coded {
    CAPSULE_DYE,
    DISPERSIVE_VISCOELASTIC,
    COHESIVE_VISCOELASTIC,
    SECOND_INSTRUMENT,
    NUCLEUS_LOOP,
    IRIS_HOOKS,
    PUPIL_RING,
    CAPSULE_HOOKS,
    CAPSULAR_TENSION_RING,
    SUTURED_RING_SEGMENT,
    INTRACAMERAL_MYDRIATIC,
    INTRACAMERAL_ANTIBIOTIC,
    ANTISEPTIC,
    TOPICAL_ANAESTHETIC,
    SUB_TENON_SET,
    NEEDLE_BLOCK_SET,
    GENERAL_ANAESTHETIC,
    PRESSURE_LOWERING_DRUG,
    ANTERIOR_VITRECTOMY_SET,
    FINE_STAB_BLADE,
    DYE_ABSORBING_LASER,
    PHOTODISRUPTION_LASER,
    THERMAL_OPENING_DEVICE,
    LATEX_FREE_SET;

    /** As a list says it. */
    @Override
    public String toString() {
        return this == SUB_TENON_SET
                ? "sub-Tenon set"
                : name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
