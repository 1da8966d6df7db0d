package org.lensward.optics;

/**
 * One eye as one formula sees it.
 *
 * @param formula which
 * @param eye the thin eye it made
 */
public record SeenEye(FormulaName formula, ThinEye eye) {}
