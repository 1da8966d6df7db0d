package org.lensward.outcome;

import java.util.Optional;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.quantity.Days;
import org.lensward.quantity.Dioptres;

/**
 * The refraction that counts, moved to the spectacle plane of the predictions.
 *
 * @param written as it was recorded
 * @param equivalent spherical equivalent at a vertex distance of 12 mm
 * @param astigmatism of the refraction at that plane, along the axis of its minus cylinder; absent where an axis is missing
 * @param after days after surgery
 */
public record ChosenRefraction(
        Refraction written, Dioptres equivalent, Optional<Astigmatism> astigmatism, Days after) {}
