package org.lensward.outcome;

import java.util.Optional;
import org.lensward.lens.LensSite;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/**
 * The lens that is in the eye.
 *
 * @param model key of its model in the catalogue
 * @param power labelled, spherical equivalent
 * @param cylinder labelled, at the lens plane, and the meridian it was laid on; for toric lenses
 * @param site where it was put; empty where the record does not say
 */
public record ImplantedLens(String model, Dioptres power, Optional<Toric> cylinder, Optional<LensSite> site) {

    /**
     * The toric part.
     *
     * @param cylinder labelled, at the lens plane; above nought
     * @param axis where its marks were laid, 0 to 180 degrees, where that was recorded
     */
    public record Toric(Dioptres cylinder, Optional<Degrees> axis) {
        public Toric {
            if (cylinder.value() <= 0) {
                throw new IllegalArgumentException("A toric lens has a cylinder above nought, not " + cylinder);
            }
        }
    }

    public ImplantedLens {
        if (model.isBlank()) {
            throw new IllegalArgumentException("An implanted lens is of a model");
        }
    }

    public boolean isToric() {
        return cylinder.isPresent();
    }
}
