package org.lensward.optics;

import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;

/** A published way to place the lens in a {@link ThinEye}. Implementations are pure and hold no state. */
public interface Formula {

    /** Which formula this is. */
    FormulaName name();

    /**
     * The thin eye of this formula.
     *
     * @param shape the eye's measurements
     * @param constants of the lens model, for the biometry method of the measurements; they must {@linkplain LensConstants#has have} this
     *     formula's own
     * @param evidence the measurement to name in a finding
     * @return the eye, with a finding where the formula is stretched; withheld where it has no answer
     */
    Outcome<ThinEye> see(EyeShape shape, LensConstants constants, Evidence evidence);
}
