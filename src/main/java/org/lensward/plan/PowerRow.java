package org.lensward.plan;

import org.lensward.quantity.Dioptres;

/**
 * One labelled power near the choice and what it would leave.
 *
 * @param power on the label
 * @param predicted spherical equivalent at the spectacle plane
 */
public record PowerRow(Dioptres power, Dioptres predicted) {}
