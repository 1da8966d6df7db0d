package org.lensward.optics;

import org.lensward.quantity.Dioptres;

/**
 * What one formula expects of one lens.
 *
 * @param formula which
 * @param refraction spherical equivalent at the spectacle plane
 */
public record Prediction(FormulaName formula, Dioptres refraction) {}
