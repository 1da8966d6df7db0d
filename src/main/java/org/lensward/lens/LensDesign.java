package org.lensward.lens;

import java.util.Optional;
import org.lensward.finding.Coded;

/**
 * How a lens model is built. What the catalogue does not say is unknown.
 *
 * @param focus how it shares out the light
 * @param material of its optic
 * @param build in how many pieces it is made
 */
public record LensDesign(Optional<Focus> focus, Optional<OpticMaterial> material, Optional<Build> build) {

    /** In how many pieces a lens is made; only three pieces belong in the sulcus. */
    public enum Build implements Coded {
        ONE_PIECE,
        THREE_PIECE;
    }

    /** A model of which the catalogue says nothing of this. */
    public static LensDesign unknown() {
        return new LensDesign(Optional.empty(), Optional.empty(), Optional.empty());
    }
}
