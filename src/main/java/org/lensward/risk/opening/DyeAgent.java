package org.lensward.risk.opening;

import java.util.Locale;
import java.util.Set;
import org.lensward.eye.Allergen;
import org.lensward.finding.Coded;

/** A dye for the lens capsule. */
public enum DyeAgent implements Coded {
    TRYPAN_BLUE(Allergen.TRYPAN_BLUE),
    /** Made up with sodium iodide, hence the second allergen (value from memory). */
    INDOCYANINE_GREEN(Allergen.INDOCYANINE_GREEN, Allergen.IODINE);

    private final Set<Allergen> allergens;

    DyeAgent(Allergen... allergens) {
        this.allergens = Set.of(allergens);
    }

    /** Allergies that forbid it. */
    public Set<Allergen> allergens() {
        return allergens;
    }

    /** As a sentence says it. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
