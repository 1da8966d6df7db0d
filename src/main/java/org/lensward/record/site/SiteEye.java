package org.lensward.record.site;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import org.hl7.fhir.r4.model.Coding;
import org.lensward.eye.Laterality;
import org.lensward.record.Systems;
import org.lensward.record.Vocabulary;

/** The eye that a local code names. */
public enum SiteEye {
    RIGHT(EnumSet.of(Laterality.RIGHT)),
    LEFT(EnumSet.of(Laterality.LEFT)),
    /** Both at once, said on purpose: SNOMED CT 40638003. */
    BOTH(EnumSet.allOf(Laterality.class));

    private final Set<Laterality> eyes;

    SiteEye(Set<Laterality> eyes) {
        this.eyes = eyes;
    }

    Set<Laterality> eyes() {
        return eyes;
    }

    Coding coding() {
        return this == BOTH
                ? new Coding().setSystem(Systems.SNOMED).setCode("40638003")
                : Vocabulary.coding(eyes.iterator().next());
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
