package org.lensward.lens.stock;

import org.lensward.quantity.Dioptres;

/**
 * Another power of the same model, as the plan predicts it.
 *
 * @param power as labelled, signed
 * @param predicted the spherical equivalent it would leave, at the spectacle plane
 */
public record Alternative(Dioptres power, Dioptres predicted) {}
