package org.lensward.plan;

import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;

/**
 * How sure a predicted refraction is, for this eye.
 *
 * @param deviation one standard deviation about the prediction; a lower estimate, for errors are taken as independent
 * @param withinHalf chance to land within 0.50 D of the target
 * @param withinOne chance to land within 1.00 D of the target
 * @param largest what to improve first
 */
public record Uncertainty(Dioptres deviation, Probability withinHalf, Probability withinOne, String largest) {}
