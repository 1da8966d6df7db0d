package org.lensward.lens.stock;

/**
 * A lens that cannot be had from stock.
 *
 * @param need what is short, and for whom
 * @param reason why
 */
public record Shortage(LensNeed need, ShortageReason reason) {}
