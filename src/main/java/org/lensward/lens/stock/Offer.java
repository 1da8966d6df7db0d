package org.lensward.lens.stock;

/**
 * A free carton of a neighbouring power that could serve where the planned one is short, if the surgeon chooses it.
 *
 * @param need what is short
 * @param alternative the power and what it would leave
 * @param unit the carton, offered to nobody else
 */
public record Offer(LensNeed need, Alternative alternative, LensUnit unit) {}
